/**
 * Everything that can keep the ears from hearing. Each has one sentence for the person; each says what still works, because
 * every answer can also be touched.
 */
export type EarsFailure =
  | { readonly kind: 'insecure-origin' }
  | { readonly kind: 'no-audio-support' }
  | { readonly kind: 'microphone-refused' }
  | { readonly kind: 'no-microphone' }
  | { readonly kind: 'microphone-busy' }
  | { readonly kind: 'microphone-unplugged' }
  | { readonly kind: 'microphone-muted' }
  | { readonly kind: 'microphone-stalled' }
  | { readonly kind: 'needs-a-tap' }
  | { readonly kind: 'capture-failed'; readonly detail: string }
  | { readonly kind: 'front-end-died'; readonly detail: string }
  | { readonly kind: 'model-offline' }
  | { readonly kind: 'model-missing'; readonly httpStatus: number }
  | { readonly kind: 'model-cut-short'; readonly gotBytes: number; readonly wantedBytes: number }
  | { readonly kind: 'model-altered' }
  | { readonly kind: 'model-timed-out' }
  | { readonly kind: 'storage-full' }
  | { readonly kind: 'storage-unavailable' }
  | { readonly kind: 'recogniser-unloadable'; readonly detail: string }
  | { readonly kind: 'recogniser-died'; readonly detail: string }
  | { readonly kind: 'recogniser-stuck' }
  | { readonly kind: 'phrase-unknown'; readonly words: readonly string[] };

const WHAT_WORKS = 'Touch still works.';

/** Why the field model does not listen, and what does. */
export function describePassedOver(failure: EarsFailure): string {
  return `The field model is not in use. ${whatIsWrong(failure)} The bundled speech model listens instead.`;
}

/** What follows where the browser works on the sound: nothing fails, but nobody can tell how well is heard. */
export const ALTERED_SOUND =
  'This browser filters what I hear, so I ask you back. Confirm the lockout by button.';

/** The failure in one clear sentence and what still works, ready to show or speak. */
export function describeFailure(failure: EarsFailure): string {
  return `${whatIsWrong(failure)} ${WHAT_WORKS}`;
}

function whatIsWrong(failure: EarsFailure): string {
  switch (failure.kind) {
    case 'insecure-origin':
      return 'Browsers give the microphone only to pages opened by a secure address, and this one is not.';
    case 'no-audio-support':
      return 'This browser cannot record sound for the app.';
    case 'microphone-refused':
      return 'The microphone is not allowed: allow it for this page in the browser settings to answer by voice.';
    case 'no-microphone':
      return 'No microphone was found: connect one to answer by voice.';
    case 'microphone-busy':
      return 'Another program holds the microphone: close it and try again.';
    case 'microphone-unplugged':
      return 'The microphone was unplugged: connect it again to answer by voice.';
    case 'microphone-muted':
      return 'The microphone is muted or gives no sound at all: switch it on to answer by voice.';
    case 'microphone-stalled':
      return 'The microphone stopped sending sound: try again.';
    case 'needs-a-tap':
      return 'Tap the screen once so that the browser lets the app listen.';
    case 'capture-failed':
      return `The microphone could not be opened (${failure.detail}).`;
    case 'front-end-died':
      return `The part that takes the noise out of the sound stopped (${failure.detail}): reload the app.`;
    case 'model-offline':
      return 'The speech files are not on this tablet yet and there is no connection to fetch them.';
    case 'model-missing':
      return `The speech files are missing where the app was installed from (answer ${failure.httpStatus}).`;
    case 'model-cut-short':
      return `The speech files arrived incomplete (${failure.gotBytes} of ${failure.wantedBytes} bytes): try again.`;
    case 'model-altered':
      return 'The speech files are not the ones this app was built with, so they are not used: try again or reinstall.';
    case 'model-timed-out':
      return 'The speech files took too long to arrive: try again nearer to the network.';
    case 'storage-full':
      return 'There is no room left on this tablet for the speech files: free some space and try again.';
    case 'storage-unavailable':
      return 'This browser window keeps nothing on the tablet (private window?), so the speech files cannot be stored.';
    case 'recogniser-unloadable':
      return `The speech recogniser did not start (${failure.detail}): reload the app.`;
    case 'recogniser-died':
      return `The speech recogniser stopped (${failure.detail}): reload the app.`;
    case 'recogniser-stuck':
      return 'The speech recogniser takes too long to answer: reload the app.';
    case 'phrase-unknown':
      return `The speech files do not know these words: ${failure.words.join(', ')}.`;
  }
}
