import type { MissCount } from '../../grammar/measurements.ts';
import type { Side } from '../../grammar/sides.ts';
import { type BaleDensity, type CountEntry, type Crop, type ShaftSpeed, standing } from './entry.ts';

/** A bale as it was counted, with what was known of its making. */
export interface CountedBale {
  readonly missed: Readonly<Record<Side, boolean>>;
  /** Bales since the ball of a side was changed, this one included: 1 is the first. Missing before a first change. */
  readonly ballAge: Readonly<Partial<Record<Side, number>>>;
  readonly crop?: Crop;
  readonly density?: BaleDensity;
  readonly speed?: ShaftSpeed;
}

/** What the counting comes to. */
export interface Tally {
  /** In the order they were made. */
  readonly bales: readonly CountedBale[];
  /** Bales with a miss on either side. */
  readonly missedBales: number;
  readonly misses: Readonly<Record<Side, number>>;
  readonly crop?: Crop;
  readonly density?: BaleDensity;
  readonly speed?: ShaftSpeed;
}

interface Making {
  ballAge: Partial<Record<Side, number>>;
  crop?: Crop;
  density?: BaleDensity;
  speed?: ShaftSpeed;
}

/** Goes through the entries that stand; a miss is a bale too. */
export function tallyOf(entries: readonly CountEntry[]): Tally {
  const bales: CountedBale[] = [];
  const making: Making = { ballAge: {} };
  const bale = (missed: CountedBale['missed']) => {
    for (const side of ['left', 'right'] as const) {
      const age = making.ballAge[side];
      if (age !== undefined) making.ballAge = { ...making.ballAge, [side]: age + 1 };
    }
    bales.push({ missed, ...making });
  };
  for (const entry of standing(entries)) {
    switch (entry.kind) {
      case 'good':
        for (let made = 0; made < entry.bales; made++) bale({ left: false, right: false });
        break;
      case 'miss':
        bale({ left: entry.side !== 'right', right: entry.side !== 'left' });
        break;
      case 'newBall':
        making.ballAge = { ...making.ballAge, [entry.side]: 0 };
        break;
      case 'crop':
        making.crop = entry.crop;
        break;
      case 'density':
        making.density = entry.density;
        break;
      case 'speed':
        making.speed = entry.speed;
        break;
      case 'takeBack':
        break;
    }
  }
  return {
    bales,
    missedBales: bales.filter(({ missed }) => missed.left || missed.right).length,
    misses: { left: countMisses(bales, 'left'), right: countMisses(bales, 'right') },
    ...(making.crop ? { crop: making.crop } : {}),
    ...(making.density ? { density: making.density } : {}),
    ...(making.speed ? { speed: making.speed } : {}),
  };
}

/** Missed bales out of all of them. */
export function missCountOf({ bales, missedBales }: Tally): MissCount {
  return { misses: missedBales, bales: bales.length };
}

export function isMissed({ missed }: CountedBale): boolean {
  return missed.left || missed.right;
}

function countMisses(bales: readonly CountedBale[], side: Side): number {
  return bales.filter(({ missed }) => missed[side]).length;
}
