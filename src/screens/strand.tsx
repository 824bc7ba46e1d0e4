import type { JSX } from 'preact';
import type { LevelReading } from '../../audio/ears/level.ts';
import type { Turn, VoiceState } from '../session/view.ts';
import './strand.css';

interface StrandProps {
  /** Knots tied in it: the answers so far. */
  readonly knots: number;
  readonly turn: Turn;
  readonly voice: VoiceState;
  readonly level: LevelReading | undefined;
  onVoiceOn(): void;
  onVoiceOff(): void;
}

export const TURN_WORDS: Readonly<Record<Turn, string>> = {
  speaking: 'Speaking',
  listening: 'Listening',
  hearing: 'I hear you',
  thinking: 'Working it out',
  quiet: 'Quiet',
};

/** Knots drawn one by one; beyond these they would touch. */
const MOST_DRAWN = 14;

/** How much louder than the room fills the strand's swing, decibels. */
const FULL_SWING_DB = 40;

/**
 * A strand of twine across the top of a job. Each answer is a knot in it; its free length shows whose turn it is:
 * slack while the voice is off, taut while it listens, swinging as wide as the voice is loud, running while it speaks.
 */
export function Strand(props: StrandProps): JSX.Element {
  const { knots, turn, voice, level } = props;
  const shown = Math.min(knots, MOST_DRAWN);
  const shape = voice.kind === 'on' ? turn : 'slack';
  return (
    <section class="strand" aria-label="Answers and voice">
      <div class="strand-twine">
        <svg
          class="strand-knots"
          viewBox={`0 0 ${shown * 26 + 8} 64`}
          style={{ width: `${(shown * 26 + 8) / 16}rem` }}
          role="img"
          aria-label={answersSoFar(knots)}
        >
          <path class="twine-edge" d={`M0 32H${shown * 26 + 8}`} />
          <path class="twine-lay" d={`M0 32H${shown * 26 + 8}`} />
          {Array.from({ length: shown }, (_, knot) => (
            <use key={knot} href="#strand-knot" x={knot * 26 + 4} y={32} />
          ))}
          <defs>
            <g id="strand-knot">
              <path class="knot" d="M1-6Q8-16 17-8 24 0 15 9 6 15 0 7-4 0 1-6Z" />
              <path class="knot-lay" d="M4-8 15 8M11-10 20 3M1 0 8 10" />
            </g>
          </defs>
        </svg>
        <svg
          class="strand-free"
          data-turn={shape}
          viewBox="0 0 400 64"
          preserveAspectRatio="none"
          aria-hidden="true"
        >
          {swing(shape, level)}
        </svg>
      </div>
      <p class="strand-says" role="status">
        <b>{voiceWord(voice, turn)}</b>
        {voice.kind === 'on' && level ? <span>Noise: {level.noise}</span> : null}
      </p>
      <VoiceButton {...props} />
    </section>
  );
}

function VoiceButton({ voice, onVoiceOn, onVoiceOff }: StrandProps): JSX.Element {
  return voice.kind === 'on' || voice.kind === 'starting' ? (
    <button type="button" class="voice-button" onClick={onVoiceOff}>
      Voice off
    </button>
  ) : (
    <button type="button" class="voice-button" onClick={onVoiceOn}>
      {voice.kind === 'failed' ? 'Try voice' : 'Voice on'}
    </button>
  );
}

function voiceWord(voice: VoiceState, turn: Turn): string {
  switch (voice.kind) {
    case 'on':
      return voice.isWarm ? TURN_WORDS[turn] : 'Getting ready to listen';
    case 'starting':
      return `Getting the voice ready, ${Math.round(voice.share * 100)} percent`;
    case 'off':
      return 'Voice is off';
    case 'failed':
      return 'No voice';
  }
}

function swing(shape: Turn | 'slack', level: LevelReading | undefined): JSX.Element {
  switch (shape) {
    case 'slack':
    case 'quiet':
      return twine('M0 32C110 66 290 66 400 32');
    case 'listening':
    case 'hearing': {
      const over = level ? level.dbfs - level.floorDbfs : 0;
      const half = 26 * Math.min(1, Math.max(0, over / FULL_SWING_DB));
      return (
        <>
          <path class="strand-blur" d={`M0 32Q200 ${32 - 2 * half} 400 32Q200 ${32 + 2 * half} 0 32Z`} />
          {twine('M0 32H400')}
        </>
      );
    }
    case 'speaking':
    case 'thinking':
      return twine('M0 32H400');
  }
}

function twine(path: string): JSX.Element {
  return (
    <>
      <path class="twine-edge" d={path} />
      <path class="twine-lay" d={path} />
    </>
  );
}

function answersSoFar(knots: number): string {
  return knots === 1 ? 'One answer so far' : `${knots} answers so far`;
}
