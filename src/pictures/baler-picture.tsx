import type { JSX } from 'preact';
import { PARTS, type PartId } from '../../flows/knotter.ts';
import { Drawing, type Shape, type Spot } from './drawing.tsx';
import type { KnotterPart } from './knotter-picture.tsx';
import { Rope } from './rope.tsx';
import { WHERE_TO_LOOK } from './where-to-look.ts';

/** Parts found on the baler as a whole, or beside it. */
export type BalerPart = Exclude<PartId, KnotterPart | 'failedString'>;

const SPOTS: Readonly<Record<BalerPart, Spot>> = {
  needle: { x: 352, y: 296, r: 40 },
  needleYoke: { x: 392, y: 318, r: 40 },
  safetyStop: { x: 316, y: 286, r: 28 },
  tripArm: { x: 442, y: 134, r: 36 },
  starWheel: { x: 492, y: 162, r: 38 },
  pawl: { x: 404, y: 132, r: 26 },
  knotterBrake: { x: 352, y: 132, r: 26 },
  twineBox: { x: 524, y: 324, r: 54 },
  tensioner: { x: 466, y: 304, r: 28 },
  twineGuides: { x: 424, y: 356, r: 32 },
  hayDogs: { x: 338, y: 186, r: 28 },
  densityRails: { x: 566, y: 170, r: 44 },
  plunger: { x: 292, y: 224, r: 46 },
  plungerKnife: { x: 320, y: 224, r: 34 },
  flywheel: { x: 192, y: 226, r: 60 },
  driveShaft: { x: 122, y: 250, r: 36 },
  driveChain: { x: 282, y: 152, r: 36 },
  tractorSeat: { x: 50, y: 150, r: 42 },
  bale: { x: 606, y: 346, r: 44 },
  windrow: { x: 208, y: 364, r: 44 },
};

/**
 * The baler is longer than the place for a picture is wide: a window of it is shown, with the part in the middle, and
 * the smaller the part the nearer.
 */
const WIDEST = 430;
const NARROWEST = 250;
const HEIGHT_TO_WIDTH = 446 / 430;
const WINDOW_TO_RING = 8;
const LEFTMOST = -6;
const RIGHTMOST = 656;
const LOWEST = 446;

const STAR_POINTS = 12;
const TOP = 186;
const FLOOR = 262;

/** A baler from its left side, travelling to the left, cut open where it matters. Simplified and not to scale. */
const SHAPES: readonly Shape[] = [
  { draw: <path class="line" d="M-6 388H656" /> },
  {
    draw: (
      <>
        <circle class="shade" cx="56" cy="310" r="76" />
        <circle cx="56" cy="310" r="30" />
        <path class="line" d="M-6 216H84L100 250" />
      </>
    ),
  },
  {
    part: 'tractorSeat',
    draw: <path d="M16 112Q24 108 30 116L40 160H84Q92 160 92 170V180H26Q20 180 18 172L8 122Q8 114 16 112Z" />,
  },
  {
    part: 'windrow',
    draw: <path d="M158 388Q168 348 188 360 198 332 218 350 240 338 246 362 260 366 262 388Z" />,
  },
  { part: 'driveShaft', draw: <path d="M92 236 158 252 154 270 88 254Z" /> },
  { draw: <circle class="shade" cx="270" cy="328" r="58" /> },
  { draw: <circle cx="270" cy="328" r="22" /> },
  { draw: <path d={`M212 ${TOP}H620V${TOP - 12}H212ZM212 ${FLOOR}H620V${FLOOR + 12}H212Z`} class="solid" /> },
  {
    draw: (
      <>
        <path class="shade" d={`M330 ${TOP}H444V${FLOOR}H330ZM444 ${TOP}H560V${FLOOR}H444Z`} />
        <path
          class="line"
          stroke-width="2"
          d="M352 200 372 214M362 240 390 232M400 206 424 220M410 250 436 238M460 206 484 216M470 248 500 236M512 204 540 216M520 250 548 240"
        />
      </>
    ),
  },
  {
    part: 'flywheel',
    draw: (
      <>
        <circle cx="192" cy="226" r="54" />
        <circle class="line detail" cx="192" cy="226" r="38" />
        <path class="line detail" d="M192 188V264M154 226H230M165 199 219 253M219 199 165 253" />
        <circle class="solid" cx="192" cy="226" r="10" />
      </>
    ),
  },
  { draw: <path class="line" stroke-width="8" d="M192 226 222 208 268 224" /> },
  { part: 'plunger', draw: <path d={`M264 ${TOP + 3}H316V${FLOOR - 3}H264ZM264 ${TOP + 34}H316`} /> },
  { part: 'plungerKnife', draw: <path d={`M316 ${TOP + 4}H326L332 ${FLOOR - 4}H316Z`} /> },
  {
    part: 'hayDogs',
    draw: (
      <path
        d={`M328 ${TOP - 12}H352L346 ${TOP + 14}ZM376 ${TOP - 12}H400L394 ${TOP + 14}ZM328 ${FLOOR + 12}H352L346 ${FLOOR - 14}Z`}
      />
    ),
  },
  {
    part: 'driveChain',
    draw: <path class="chain" d="M196 172 372 118M200 186 376 134" />,
  },
  {
    draw: (
      <>
        <path class="line" stroke-width="6" d="M340 132H420" />
        <circle class="shade" cx="378" cy="132" r="27" />
        <path class="line" d="M366 158 360 180 378 182" stroke-width="6" />
      </>
    ),
  },
  { part: 'knotterBrake', draw: <path d="M340 116H362V150H340ZM340 134H362" /> },
  { part: 'pawl', draw: <path d="M396 112 418 116 414 132 404 134 402 152 392 150Z" /> },
  { part: 'tripArm', draw: <path d="M412 112 424 108 474 140 484 150 476 158 462 150Z" /> },
  {
    part: 'starWheel',
    draw: (
      <>
        <path d={starPath(492, 162, 34, 22)} />
        <circle class="solid" cx="492" cy="162" r="7" />
      </>
    ),
  },
  {
    part: 'densityRails',
    draw: (
      <>
        <path
          d={`M516 ${TOP - 12} 628 ${TOP}V${TOP + 12}H516ZM516 ${FLOOR + 12} 628 ${FLOOR}V${FLOOR - 12}H516Z`}
        />
        <path class="line detail" d="M580 176V158L594 152 572 146 594 140 572 134 586 128V118" />
      </>
    ),
  },
  { part: 'needleYoke', draw: <path d="M432 258 448 266 424 326 386 336 376 322 410 312Z" /> },
  { part: 'needle', draw: <path d="M394 338Q340 336 326 270L338 266Q352 316 396 316Z" /> },
  { part: 'safetyStop', draw: <path d="M300 270H330V284H318L312 302H302Z" /> },
  {
    part: 'twineBox',
    draw: (
      <>
        <path d="M480 284H570V366H480Z" />
        <circle class="line detail" cx="504" cy="326" r="18" />
        <circle class="line detail" cx="504" cy="326" r="9" />
        <circle class="line detail" cx="546" cy="326" r="18" />
        <circle class="line detail" cx="546" cy="326" r="9" />
      </>
    ),
  },
  { draw: <Rope path="M488 304H456L448 356H400L392 332 342 318 330 268" /> },
  { part: 'tensioner', draw: <path d="M454 292H480V300H454ZM454 308H480V316H454Z" /> },
  {
    part: 'twineGuides',
    draw: <path class="guide" d="M402 344A12 12 0 1 1 401 344ZM446 344A12 12 0 1 1 445 344Z" />,
  },
  {
    part: 'bale',
    draw: (
      <>
        <path d="M566 306H648V388H566Z" />
        <path class="line detail" d="M566 330H648M566 364H648" />
      </>
    ),
  },
];

/** The baler from the side with one part lit. */
export function BalerPicture({ lit }: { readonly lit: BalerPart }): JSX.Element {
  const { from } = WHERE_TO_LOOK[lit];
  const spot = SPOTS[lit];
  const width = Math.min(WIDEST, Math.max(NARROWEST, WINDOW_TO_RING * spot.r));
  const height = width * HEIGHT_TO_WIDTH;
  const frame = {
    x: within(spot.x - width / 2, LEFTMOST, RIGHTMOST - width),
    y: within(spot.y - height / 2, 0, LOWEST - height),
    width,
    height,
  };
  const scale = width / WIDEST;
  // From behind the eye stands at the right edge, from anywhere else below.
  const eye = from.startsWith('from behind')
    ? { x: frame.x + width - 34 * scale, y: frame.y + 44 * scale, scale }
    : { x: frame.x + width / 2, y: frame.y + height - 28 * scale, scale };
  return (
    <Drawing
      frame={frame}
      shapes={SHAPES}
      lit={lit}
      spot={spot}
      eye={eye}
      alt={`A baler from its left side. The ${PARTS[lit]} is marked. Look ${from}.`}
    />
  );
}

function within(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}

function starPath(cx: number, cy: number, outer: number, inner: number): string {
  const corners = Array.from({ length: 2 * STAR_POINTS }, (_, corner) => {
    const angle = (corner * Math.PI) / STAR_POINTS;
    const radius = corner % 2 === 0 ? outer : inner;
    return `${(cx + radius * Math.sin(angle)).toFixed(1)} ${(cy - radius * Math.cos(angle)).toFixed(1)}`;
  });
  return `M${corners.join('L')}Z`;
}
