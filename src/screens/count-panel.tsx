import { useSignal } from '@preact/signals';
import type { ComponentType, JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import type { Tally } from '../../flows/miss-log/tally.ts';
import { type Wording, worded } from '../../flows/wording.ts';
import type { MeaningId } from '../../grammar/lexicon.ts';
import type { Say } from '../../grammar/say.ts';
import type { Side } from '../../grammar/sides.ts';
import type { BaleCount } from '../report/count-lines.ts';
import { asRead } from './as-read.ts';
import './count-panel.css';
import { asSentence } from './sentence.ts';

interface CountPanelProps {
  readonly wording: Wording;
  readonly tally: Tally;
  /** What came of the last thing said, as it is spoken. */
  readonly notices: Say;
  onPress(meaning: MeaningId): void;
  onNumber(): void;
}

/** The drawing of the count, loaded when bales are counted: no job needs it before. */
interface Drawing {
  readonly CountChart: ComponentType<{ count: BaleCount }>;
  baleCount(tally: Tally): BaleCount;
}

interface CountButton {
  readonly meaning: MeaningId;
  readonly label: string;
  readonly side?: Side;
}

const BALES: readonly CountButton[] = [
  { meaning: 'count.missLeft', label: 'Miss', side: 'left' },
  { meaning: 'count.good', label: 'Good bale' },
  { meaning: 'count.missRight', label: 'Miss', side: 'right' },
  { meaning: 'count.missBoth', label: 'Miss both' },
];

const OTHERS: readonly CountButton[] = [
  { meaning: 'count.newBallLeft', label: 'New ball', side: 'left' },
  { meaning: 'count.newBallRight', label: 'New ball', side: 'right' },
  { meaning: 'count.cropThin', label: 'Thin crop' },
  { meaning: 'count.cropUsual', label: 'Usual crop' },
  { meaning: 'count.cropDense', label: 'Heavy crop' },
  { meaning: 'count.densityLooser', label: 'Looser bales' },
  { meaning: 'count.densityUsual', label: 'Usual bales' },
  { meaning: 'count.densityTighter', label: 'Tighter bales' },
  { meaning: 'count.speedSlow', label: 'Slower shaft' },
  { meaning: 'count.speedFull', label: 'Full shaft speed' },
  { meaning: 'count.takeBack', label: 'Take the last one back' },
  { meaning: 'count.pattern', label: 'What pattern?' },
];

/** Bales counted one by one: large buttons for a bale, smaller ones for what changes, and what it comes to. */
export function CountPanel({ wording, tally, notices, onPress, onNumber }: CountPanelProps): JSX.Element {
  const drawing = useSignal<Drawing | undefined>(undefined);
  useEffect(() => {
    void Promise.all([import('../report/count-chart.tsx'), import('../report/count-lines.ts')]).then(
      ([{ CountChart }, { baleCount }]) => {
        drawing.value = { CountChart, baleCount };
      },
    );
  }, []);
  const { bales, missedBales, misses } = tally;
  const drawn = bales.length > 0 ? drawing.value : undefined;
  return (
    <div class="count-panel">
      <p class="count-figures" role="status">
        <b>{bales.length}</b> bales, <b>{missedBales}</b> missed. {asSentence(worded('left', wording))}{' '}
        {misses.left}, {worded('right', wording)} {misses.right}. <span> {asRead(notices)}</span>
      </p>
      <div class="count-bales">
        {BALES.map(({ meaning, label, side }) => (
          <button type="button" key={meaning} onClick={() => onPress(meaning)}>
            {side ? `${label} ${worded(side, wording)}` : label}
          </button>
        ))}
      </div>
      <div class="count-others">
        {OTHERS.map(({ meaning, label, side }) => (
          <button
            type="button"
            key={meaning}
            aria-pressed={isOn(meaning, tally)}
            onClick={() => onPress(meaning)}
          >
            {side ? `${label} ${worded(side, wording)}` : label}
          </button>
        ))}
        <button type="button" onClick={onNumber}>
          Several good bales
        </button>
      </div>
      {drawn ? <drawn.CountChart count={drawn.baleCount(tally)} /> : null}
    </div>
  );
}

function isOn(meaning: MeaningId, { crop, density, speed }: Tally): boolean | undefined {
  switch (meaning) {
    case 'count.cropThin':
      return crop === 'thin';
    case 'count.cropUsual':
      return crop === 'usual';
    case 'count.cropDense':
      return crop === 'dense';
    case 'count.densityLooser':
      return density === 'looser';
    case 'count.densityUsual':
      return density === 'usual';
    case 'count.densityTighter':
      return density === 'tighter';
    case 'count.speedSlow':
      return speed === 'slow';
    case 'count.speedFull':
      return speed === 'full';
    default:
      return undefined;
  }
}
