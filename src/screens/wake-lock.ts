/**
 * Keeps the screen awake from now until the returned function is called. The browser drops the lock whenever the page
 * is hidden, so it is asked for anew when the page comes back. A tablet that cannot do it, or whose battery is low,
 * sleeps as it always does, and sleep takes the lockout away.
 */
export function stayAwake(page: Document = document): () => void {
  let isWanted = true;
  let lock: WakeLockSentinel | undefined;
  let isAsking = false;
  const ask = async () => {
    const isHeld = lock !== undefined && !lock.released;
    if (isAsking || isHeld || page.visibilityState !== 'visible' || !navigator.wakeLock) return;
    isAsking = true;
    try {
      const granted = await navigator.wakeLock.request('screen');
      if (isWanted) lock = granted;
      else await granted.release();
    } catch {
      // Refused, by the battery saver for one: nothing else depends on it.
    }
    isAsking = false;
  };
  const again = () => void ask();
  page.addEventListener('visibilitychange', again);
  again();
  return () => {
    isWanted = false;
    page.removeEventListener('visibilitychange', again);
    void lock?.release();
  };
}
