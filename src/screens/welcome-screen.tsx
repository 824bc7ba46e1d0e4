import { type Signal, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { Cautions } from './cautions.tsx';
import { CHECKED_PHRASES, type HearingCheck, type HearingChecker } from './hearing-check.ts';
import { Page } from './page.tsx';
import type { Preferences } from './preferences.ts';
import { goTo } from './route.ts';
import { asSentence } from './sentence.ts';
import './welcome-screen.css';

interface WelcomeScreenProps {
  readonly preferences: Signal<Preferences>;
  readonly makeChecker: () => HearingChecker;
}

/** The first minute: the cautions, then microphone, voice and hearing, each of which can be left for later. */
export function WelcomeScreen({ preferences, makeChecker }: WelcomeScreenProps): JSX.Element {
  const step = useSignal<'cautions' | 'hearing'>('cautions');
  const checker = useMemo(makeChecker, []);
  useEffect(() => () => checker.stop(), [checker]);
  const leave = () => {
    preferences.value = { ...preferences.value, wasWelcomed: true };
    goTo({ page: 'start' });
  };
  return (
    <Page title={step.value === 'cautions' ? 'Before anything else' : 'Voice and hearing'}>
      {step.value === 'cautions' ? (
        <>
          <Cautions />
          <p>
            The plate at the edge of the screen says how near you may go. It never says more than you have
            confirmed in your own words.
          </p>
          <button
            type="button"
            class="page-go"
            onClick={() => {
              // Asked once, at the tap: whether records outlast a tablet that runs full.
              void navigator.storage?.persist?.();
              step.value = 'hearing';
            }}
          >
            I have read that
          </button>
        </>
      ) : (
        <>
          <HearingPart check={checker.state.value} onStart={() => void checker.start()} />
          <button type="button" onClick={leave}>
            {checker.state.value.kind === 'done' ? 'Go to the start' : 'Go on with buttons only'}
          </button>
        </>
      )}
    </Page>
  );
}

function HearingPart({ check, onStart }: { readonly check: HearingCheck; onStart(): void }): JSX.Element {
  switch (check.kind) {
    case 'idle':
      return (
        <>
          <p>
            The voice asks, and you answer aloud. What you say stays on this tablet. The next tap asks for the
            microphone; then say three things after the voice.
          </p>
          <button type="button" class="page-go" onClick={onStart}>
            Switch microphone and voice on
          </button>
        </>
      );
    case 'starting':
      return <p role="status">Getting the voice ready: {Math.floor(100 * check.share)} %.</p>;
    case 'saying':
      return (
        <div aria-live="polite">
          <p class="whose-turn" data-turn={check.isYourTurn ? 'yours' : 'mine'}>
            {check.isYourTurn ? 'Now you, from where you will stand:' : 'Listen first. Then say:'}
          </p>
          <p class="say-this">{asSentence(check.phrase)}</p>
          <Marks heard={check.heard} />
        </div>
      );
    case 'done':
      return (
        <div role="status">
          <p class="say-this">{verdict(check.heard)}</p>
          <Marks heard={check.heard} />
          <button type="button" onClick={onStart}>
            Try once more
          </button>
        </div>
      );
    case 'failed':
      return (
        <>
          <p class="trouble" role="alert">
            {check.sentence}
          </p>
          <button type="button" onClick={onStart}>
            Try again
          </button>
        </>
      );
  }
}

/** What the check means for a job, by how many of the phrases were heard. */
export function verdict(heard: readonly boolean[]): string {
  const count = heard.filter(Boolean).length;
  if (count === heard.length) return 'I hear you well.';
  if (count === 0) return 'I did not hear you. Come nearer, or use the buttons.';
  return `I heard ${count} of ${heard.length}. Come nearer, or speak up.`;
}

function Marks({ heard }: { readonly heard: readonly boolean[] }): JSX.Element {
  return (
    <ol class="hearing-marks">
      {CHECKED_PHRASES.map((meaning, at) => (
        <li key={meaning} data-heard={heard[at] ?? 'waiting'}>
          {heard[at] === undefined ? `${at + 1}` : heard[at] ? 'heard' : 'not heard'}
        </li>
      ))}
    </ol>
  );
}
