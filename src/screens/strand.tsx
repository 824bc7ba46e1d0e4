import type { JSX } from 'preact';
import type { LevelReading } from '../../audio/ears/level.ts';
import type { HearingGrade } from '../../grammar/hearing-grade.ts';
import type { Turn, VoiceState } from '../session/view.ts';
import { HearingSign } from './hearing-sign.tsx';
import './strand.css';

interface StrandProps {
  /** Knots tied in it: the answers so far. */
  readonly knots: number;
  readonly turn: Turn;
  readonly voice: VoiceState;
  readonly level: LevelReading | undefined;
  readonly hearing: HearingGrade;
  onVoiceOn(): void;
  onVoiceOff(): void;
}

export const TURN_WORDS: Readonly<Record<Turn, string>> = {
  speaking: 'Speaking',
  listening: 'Listening',
  hearing: 'I hear you',
  thinking: 'Working it out',
  resting: 'Buttons only',
  quiet: 'Quiet',
};

/** Knots drawn one by one, the latest nearest the free length; older ones have run off the edge. */
const MOST_DRAWN = 14;
const KNOT_STEP = 26;
const KNOTS_WIDTH = MOST_DRAWN * KNOT_STEP;

/** How much louder than the room fills the strand's swing, decibels. */
const FULL_SWING_DB = 40;

/**
 * A strand of twine across the top of a job. Each answer is a knot in it; its free length shows whose turn it is:
 * slack while the voice is off, taut while it listens, swinging as wide as the voice is loud, running while it speaks.
 */
export function Strand(props: StrandProps): JSX.Element {
  const { knots, turn, voice, level, hearing } = props;
  const shown = Math.min(knots, MOST_DRAWN);
  const shape = voice.kind === 'on' ? turn : 'slack';
  return (
    <section class="strand" aria-label="Answers and voice">
      <div class="strand-twine">
        <svg
          class="strand-knots"
          viewBox={`0 0 ${KNOTS_WIDTH} 64`}
          preserveAspectRatio="xMaxYMid slice"
          role="img"
          aria-label={answersSoFar(knots)}
        >
          <defs>
            <g id="strand-knot">
              <path class="knot" d="M-10 0Q-9-15 0-15 10-15 10 0 9 15 0 15-10 15-10 0Z" />
              <path class="knot-lay" d="M-7-9 7 10M1-13 9-1M-9 1-1 13" />
            </g>
          </defs>
          {twine(`M0 32H${KNOTS_WIDTH}`)}
          {Array.from({ length: shown }, (_, knot) => (
            <use key={knot} href="#strand-knot" x={KNOTS_WIDTH - KNOT_STEP * (knot + 0.5)} y={32} />
          ))}
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
        {voice.kind === 'on' ? <HearingSign grade={hearing} /> : null}
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
      return voice.isWarm ? TURN_WORDS[turn] : 'Getting ready';
    case 'starting':
      return `Loading, ${Math.floor(voice.share * 100)} %`;
    case 'off':
      return 'Voice is off';
    case 'failed':
      return 'No voice';
  }
}

function swing(shape: Turn | 'slack', level: LevelReading | undefined): JSX.Element {
  switch (shape) {
    case 'slack':
    case 'resting':
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
