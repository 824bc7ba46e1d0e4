import type { JSX } from 'preact';
import { PARTS, type PartId } from '../../flows/knotter.ts';
import { Drawing, type Shape, type Spot } from './drawing.tsx';
import { Rope } from './rope.tsx';
import { WHERE_TO_LOOK } from './where-to-look.ts';

/** Parts of one knotter. */
export type KnotterPart = Extract<
  PartId,
  | 'twineDisc'
  | 'twineHolder'
  | 'billhook'
  | 'tongue'
  | 'twineFinger'
  | 'knifeArm'
  | 'wiper'
  | 'camGear'
  | 'knotterFrame'
>;

const SPOTS: Readonly<Record<KnotterPart, Spot>> = {
  twineDisc: { x: 122, y: 222, r: 66 },
  twineHolder: { x: 66, y: 254, r: 52 },
  billhook: { x: 252, y: 268, r: 50 },
  tongue: { x: 262, y: 246, r: 36 },
  twineFinger: { x: 120, y: 344, r: 48 },
  knifeArm: { x: 330, y: 292, r: 52 },
  wiper: { x: 254, y: 326, r: 44 },
  camGear: { x: 330, y: 112, r: 88 },
  knotterFrame: { x: 212, y: 140, r: 74 },
};

const FRAME = { x: 0, y: 0, width: 420, height: 446 };
const EYE = { x: 212, y: 414 };

/** Angles of the four notches of the disc, degrees. One tie moves it on by one of them. */
const NOTCHES = [0, 90, 180, 270];

/** Teeth of the cam gear's two part-rows, degrees from the top. The rest of its rim is smooth: it drives only a while. */
const TEETH = [-64, -52, -40, -28, 118, 130, 142, 154, 166, 178];

/** One knotter as it is met from behind, simplified: what is where, not how large or how set. */
const SHAPES: readonly Shape[] = [
  { draw: <path class="shade" d="M-4 92H424V126H-4Z" /> },
  {
    part: 'camGear',
    draw: (
      <>
        {TEETH.map((angle) => (
          <rect key={angle} x="320" y="6" width="20" height="30" transform={`rotate(${angle} 330 112)`} />
        ))}
        <circle cx="330" cy="112" r="86" />
        <path
          class="line detail"
          d="M330 48A64 64 0 0 1 394 112Q394 150 362 152 330 150 322 172 300 186 276 148A64 64 0 0 1 330 48Z"
        />
        <circle class="shade detail" cx="330" cy="112" r="24" />
      </>
    ),
  },
  {
    part: 'knotterFrame',
    draw: (
      <>
        <path d="M180 74H244V132L262 176V214H232L216 186 178 212 150 236 118 222 142 178 180 136Z" />
        <path class="line detail" d="M196 74V50L228 42 196 34 228 26 196 18 228 10" />
        <circle class="shade detail" cx="212" cy="110" r="22" />
      </>
    ),
  },
  { draw: <Rope path="M424 232H300L262 262 196 252 122 176" /> },
  {
    part: 'twineDisc',
    draw: (
      <>
        <circle cx="122" cy="222" r="56" />
        <circle class="line detail" cx="122" cy="222" r="46" stroke-width="3" />
        {NOTCHES.map((angle) => (
          <path
            key={angle}
            class="notch"
            d="M112 164L116 186Q122 192 128 186L132 164Z"
            transform={`rotate(${angle} 122 222)`}
          />
        ))}
        <circle class="solid" cx="122" cy="222" r="9" />
      </>
    ),
  },
  {
    part: 'twineHolder',
    draw: (
      <>
        <path d="M30 186 50 180Q46 250 102 288L96 306Q22 268 30 186Z" />
        <circle class="shade detail" cx="38" cy="200" r="10" />
      </>
    ),
  },
  {
    part: 'knifeArm',
    draw: (
      <>
        <path d="M344 196 376 196Q388 280 330 316L268 326 204 300 196 282 270 298 318 284Q346 262 344 196Z" />
        <path class="line detail" d="M206 286 262 300" />
        <circle class="shade detail" cx="360" cy="210" r="11" />
      </>
    ),
  },
  { part: 'wiper', draw: <path d="M214 308Q250 332 300 316L304 332Q250 352 206 322Z" /> },
  {
    part: 'billhook',
    draw: (
      <path d="M234 186H264V232Q300 240 312 270 316 284 302 284 286 264 262 266L240 276Q226 270 230 250Z" />
    ),
  },
  {
    part: 'tongue',
    draw: (
      <>
        <path d="M236 240Q262 240 288 254L302 268 264 256 238 256Z" />
        <circle class="detail" cx="228" cy="244" r="12" />
      </>
    ),
  },
  { draw: <Rope path="M66 420Q92 340 122 300L160 262 122 176" /> },
  {
    part: 'twineFinger',
    draw: <path d="M16 372Q90 372 128 336 152 316 182 318L180 302Q142 298 116 322 82 354 16 354Z" />,
  },
];

/** A knotter from behind with one of its parts lit. */
export function KnotterPicture({ lit }: { readonly lit: KnotterPart }): JSX.Element {
  return (
    <Drawing
      frame={FRAME}
      shapes={SHAPES}
      lit={lit}
      spot={SPOTS[lit]}
      eye={EYE}
      alt={`One knotter from behind. The ${PARTS[lit]} is marked. Look ${WHERE_TO_LOOK[lit].from}.`}
    />
  );
}

export function isKnotterPart(part: PartId): part is KnotterPart {
  return Object.hasOwn(SPOTS, part);
}
