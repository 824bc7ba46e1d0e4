/**
 * Why something could not be kept or read. Every kind has one fixed text, in whole sentences that can be shown
 * and spoken: what is wrong, what still works, what to do.
 */
export type TroubleKind = keyof typeof SENTENCES;

export interface Trouble {
  readonly kind: TroubleKind;
  readonly sentence: string;
  /** What the browser said, for whoever has to look into it. */
  readonly detail?: string;
}

/** Success with a value, or a trouble; nothing here throws at a caller. */
export type Kept<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly trouble: Trouble };

const NOTHING_KEPT = 'Nothing can be kept on this tablet.';
const CHECKS_STILL_WORK = 'The checks still work. Write the result down.';
const HELD_FOR_NOW = 'What is not recorded yet is held until the app closes.';

const SENTENCES = {
  noStorage: `${NOTHING_KEPT} The browser gives the app no place to store anything. ${CHECKS_STILL_WORK}`,
  otherTab:
    'This app is already open in another tab. Go on there, or close that one and open this one again.',
  blocked: `${NOTHING_KEPT} An older tab of this app is in the way. Close every other tab of it and open this one again. ${CHECKS_STILL_WORK}`,
  newerApp: `${NOTHING_KEPT} The records were made by a newer version of this app. Update the app, and they will open. ${CHECKS_STILL_WORK}`,
  full: `The tablet is full, so nothing more can be recorded. ${HELD_FOR_NOW} Free some room, or save the job to a file now. The checks still work.`,
  lostConnection: `The store on this tablet was closed and does not open again. ${HELD_FOR_NOW} Save the job to a file now. The checks still work.`,
  failed: `The store on this tablet failed. ${HELD_FOR_NOW} Save the job to a file now. The checks still work.`,
} as const;

export function trouble(kind: TroubleKind, detail?: string): Trouble {
  return { kind, sentence: SENTENCES[kind], ...(detail ? { detail } : {}) };
}

/** The trouble behind an error of IndexedDB, by the names the standard gives them. */
export function troubleFrom(error: unknown): Trouble {
  const { name, message } = asError(error);
  const detail = message ? `${name}: ${message}` : name;
  switch (name) {
    case 'QuotaExceededError':
      return trouble('full', detail);
    case 'VersionError':
      return trouble('newerApp', detail);
    case 'SecurityError':
    case 'NotSupportedError':
      return trouble('noStorage', detail);
    default:
      return trouble(isLostConnection(error) ? 'lostConnection' : 'failed', detail);
  }
}

/** Carries a trouble out of a generator, which can only throw. */
export class TroubleError extends Error {
  override readonly name = 'TroubleError';
  readonly trouble: Trouble;

  constructor(trouble: Trouble) {
    super(trouble.sentence);
    this.trouble = trouble;
  }
}

/** Whether opening the store anew may help: the browser closes stores of pages it put in the background. */
export function isLostConnection(error: unknown): boolean {
  return ['InvalidStateError', 'AbortError', 'UnknownError', 'TransactionInactiveError'].includes(
    asError(error).name,
  );
}

function asError(error: unknown): { readonly name: string; readonly message: string } {
  return error instanceof Error || error instanceof DOMException
    ? error
    : { name: 'Error', message: String(error) };
}
