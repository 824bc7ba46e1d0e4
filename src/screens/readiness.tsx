import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import type { Installed } from '../offline/installed.ts';
import type { VoiceAtHand } from '../offline/voice-at-hand.ts';

interface ReadinessProps {
  readonly installed: ReadonlySignal<Installed>;
  readonly voiceAtHand: ReadonlySignal<VoiceAtHand>;
}

/** Whether the tablet can go out to a field now. Shown between jobs only, and so is the offer of a newer version. */
export function Readiness({ installed, voiceAtHand }: ReadinessProps): JSX.Element {
  const app = installed.value;
  return (
    <section class="readiness" aria-label="Ready for the field">
      <p role="status">{readinessText(app, voiceAtHand.value)}</p>
      {app.kind === 'newer' ? (
        <button type="button" onClick={app.use}>
          Use the newer version
        </button>
      ) : null}
    </section>
  );
}

/** The first thing that is not ready yet, in a sentence. */
export function readinessText(app: Installed, voice: VoiceAtHand): string {
  if (app.kind === 'cannot') return app.sentence;
  if (voice.kind === 'cannot') return voice.sentence;
  if (app.kind === 'installing') return 'Putting the app on this tablet.';
  if (voice.kind === 'coming') return `Putting the voice on this tablet: ${Math.floor(100 * voice.share)} %.`;
  return app.kind === 'newer' ? 'A newer version is here.' : 'Ready: everything works with no network.';
}
