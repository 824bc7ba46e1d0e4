const LOCK = 'knotwright-speech-model';
/** A slow network may bring a model for that long, milliseconds. */
const WAIT_MS = 120_000;

/**
 * Does something to the store of speech models while nobody else does: the recogniser's library syncs its whole store
 * without a lock of its own, so two that load or fetch at once, in one tab or in two, can delete each other's files.
 * @throws DOMException where the lock is not given in time
 */
export function holdingModels<T>(work: () => Promise<T>): Promise<T> {
  return navigator.locks.request(LOCK, { signal: AbortSignal.timeout(WAIT_MS) }, work);
}
