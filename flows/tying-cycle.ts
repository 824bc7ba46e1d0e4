/** What moves in a tying cycle. */
export type Mover = 'plunger' | 'needle' | 'finger' | 'disc' | 'billhook' | 'knife';

/** When something moves, in degrees of the knotter shaft. One turn is one tie. */
export interface Motion {
  readonly mover: Mover;
  readonly name: string;
  readonly fromDeg: number;
  readonly toDeg: number;
  /** What it is timed to; a fault in the timing shows between these two. */
  readonly timedTo: string;
}

/**
 * The order is reliable; the degrees are expert estimates for 80 strokes a minute and one turn of the knotter shaft a
 * stroke. They show what follows what and are never a setting: the operator's manual has those.
 */
export const MOTIONS: readonly Motion[] = [
  { mover: 'plunger', name: 'Plunger shields the needle', fromDeg: 15, toDeg: 130, timedTo: 'the flywheel' },
  { mover: 'needle', name: 'Needle up and back', fromDeg: 0, toDeg: 250, timedTo: 'the plunger' },
  { mover: 'finger', name: 'Twine finger', fromDeg: 60, toDeg: 140, timedTo: 'the needle at its top' },
  { mover: 'disc', name: 'Twine disc, one notch', fromDeg: 100, toDeg: 190, timedTo: 'the cam gear' },
  { mover: 'billhook', name: 'Billhook, one turn', fromDeg: 150, toDeg: 290, timedTo: 'the cam gear' },
  { mover: 'knife', name: 'Knife and wiper', fromDeg: 270, toDeg: 330, timedTo: 'the closed tongue' },
];

/** A moment of the cycle worth stopping at. */
export interface Station {
  readonly id:
    | 'waiting'
    | 'tripped'
    | 'needleUp'
    | 'across'
    | 'clamped'
    | 'loop'
    | 'needleBack'
    | 'cut'
    | 'tied';
  readonly deg: number;
  readonly title: string;
  readonly tells: string;
}

export const STATIONS: readonly [Station, ...Station[]] = [
  {
    id: 'waiting',
    deg: 0,
    title: 'The bale grows',
    tells:
      'The disc holds the old strand. It runs over the top of the bale, down the back, under it, and forward to the needle.',
  },
  {
    id: 'tripped',
    deg: 5,
    title: 'Trip',
    tells:
      'The star wheel lets the trip arm go. The pawl drops in, and the knotter shaft starts its one turn.',
  },
  {
    id: 'needleUp',
    deg: 130,
    title: 'Needle up',
    tells:
      'The needle carries the new strand up the front of the bale, while the plunger holds the hay back.',
  },
  {
    id: 'across',
    deg: 140,
    title: 'Across the billhook',
    tells:
      'The twine finger lays the new strand beside the old one, over the billhook and into the open notch.',
  },
  {
    id: 'clamped',
    deg: 190,
    title: 'Clamped',
    tells: 'The disc moves on one notch, and the holder clamps the new strand.',
  },
  {
    id: 'loop',
    deg: 260,
    title: 'The loop',
    tells: 'The billhook turns once and winds a loop. Its tongue opens, takes both strands, and shuts.',
  },
  {
    id: 'needleBack',
    deg: 265,
    title: 'Needle back',
    tells:
      'The needle goes home and leaves the new strand lying from disc to needle: the next bale’s string.',
  },
  {
    id: 'cut',
    deg: 320,
    title: 'Cut and wipe',
    tells:
      'The knife cuts both strands between billhook and disc. The wiper pushes the loop off over the ends.',
  },
  {
    id: 'tied',
    deg: 360,
    title: 'Tied',
    tells: 'The knot goes with the bale. Arm home, pawl out, and the brake holds the needles.',
  },
];

/** The station that many steps on from another, held between the first and the last. */
export function stationAfter(at: number, by: number): number {
  return Math.min(STATIONS.length - 1, Math.max(0, at + by));
}
