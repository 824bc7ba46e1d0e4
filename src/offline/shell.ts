/** The files the app needs to start with no network, all of one build. */
export interface Shell {
  /** Changes whenever any file does. */
  readonly version: string;
  /** Addresses relative to the service worker. */
  readonly files: readonly string[];
}

/** Where the page is answered from when a document is asked for. */
export const PAGE = './';

/** What a page tells a waiting service worker to make it take over. */
export const TAKE_OVER = 'take-over';

/** Recorded voice, kept apart from the shell: its files carry their own hash and outlive an update. */
export const VOICE_CACHE = 'knotwright-voice';

export const SHELL_CACHES = 'knotwright-shell-';

/** The voice's packs, which are fetched one by one with progress and checked. Its table of contents is part of the shell. */
export function isVoicePack(url: URL): boolean {
  return url.pathname.endsWith('.clips');
}
