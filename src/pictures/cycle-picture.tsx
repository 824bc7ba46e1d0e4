import type { JSX } from 'preact';
import './cycle-picture.css';
import './drawing.css';
import type { Station } from '../../flows/tying-cycle.ts';
import { Rope } from './rope.tsx';

type StationId = Station['id'];

/** Where the movers stand and the string lies at a station. */
interface Pose {
  /** The plunger stands hard against the hay, its slots over the needles. */
  readonly isPlungerIn: boolean;
  readonly isNeedleUp: boolean;
  readonly isFingerOver: boolean;
  /** Degrees turned from where the cycle began. */
  readonly discDeg: number;
  readonly billhookDeg: number;
  readonly isKnifeThrough: boolean;
  readonly isPawlIn: boolean;
  readonly strands: readonly string[];
  /** What moves here, by name. */
  readonly moves?: string;
  readonly knot?: { readonly x: number; readonly y: number };
}

/** Over the top of the bale, down its back, under it: the same from disc to front corner at every station. */
const ROUND_THE_BALE = 'M124 84L196 100 212 134H472V296H206';
const BOX = 'V384';

const POSES: Readonly<Record<StationId, Pose>> = {
  waiting: pose({ strands: [`${ROUND_THE_BALE}L152 340${BOX}`] }),
  tripped: pose({ moves: 'clutch pawl', isPawlIn: true, strands: [`${ROUND_THE_BALE}L152 340${BOX}`] }),
  needleUp: pose({
    isPlungerIn: true,
    moves: 'needle',
    isPawlIn: true,
    isNeedleUp: true,
    strands: [`${ROUND_THE_BALE}V124L152 62`, `M152 62${BOX}`],
  }),
  across: pose({
    isPlungerIn: true,
    moves: 'twine finger',
    isPawlIn: true,
    isNeedleUp: true,
    isFingerOver: true,
    strands: [`${ROUND_THE_BALE}V126L196 108 120 98`, `M120 98 152 150${BOX}`],
  }),
  clamped: pose({
    moves: 'twine disc',
    isPawlIn: true,
    isNeedleUp: true,
    isFingerOver: true,
    discDeg: 90,
    strands: [`${ROUND_THE_BALE}V126L196 108 112 112`, `M112 112 152 150${BOX}`],
  }),
  loop: pose({
    moves: 'billhook',
    isPawlIn: true,
    isNeedleUp: true,
    discDeg: 90,
    billhookDeg: 300,
    strands: [
      `${ROUND_THE_BALE}V126L196 108 112 112`,
      'M206 112Q234 104 226 88 214 76 200 92 190 108 206 116',
      `M112 112 152 150${BOX}`,
    ],
  }),
  needleBack: pose({
    moves: 'needle',
    isPawlIn: true,
    discDeg: 90,
    billhookDeg: 330,
    strands: [
      `${ROUND_THE_BALE}V126L196 108 112 112`,
      'M206 112Q234 104 226 88 214 76 200 92 190 108 206 116',
      `M112 112 152 340${BOX}`,
    ],
  }),
  cut: pose({
    moves: 'knife, wiper',
    isPawlIn: true,
    discDeg: 90,
    billhookDeg: 360,
    isKnifeThrough: true,
    strands: ['M206 128V296H472V134H214', `M112 112 152 340${BOX}`, 'M84 150 102 176'],
    knot: { x: 208, y: 122 },
  }),
  tied: pose({
    discDeg: 90,
    billhookDeg: 360,
    strands: ['M226 134V296H492V134H226', `M112 112 206 128 208 340H152${BOX}`],
    knot: { x: 228, y: 132 },
  }),
};

/** The string's path at one station of a tying cycle, from the left side, travelling to the left. Not to scale. */
export function CyclePicture({ station }: { readonly station: Station }): JSX.Element {
  const {
    isPlungerIn,
    moves,
    isNeedleUp,
    isFingerOver,
    discDeg,
    billhookDeg,
    isKnifeThrough,
    isPawlIn,
    strands,
    knot,
  } = POSES[station.id];
  const moved = station.id === 'tied' ? 20 : 0;
  return (
    <svg
      class="cycle drawing"
      viewBox="0 -14 520 404"
      role="img"
      aria-label={`${station.title}. ${station.tells}`}
    >
      <g class="shape">
        <path class="shade" d={`M${214 + moved} 142H${464 + moved}V288H${214 + moved}Z`} />
        <path
          class="line"
          stroke-width="2"
          d={`M${240 + moved} 170 290 184M${262 + moved} 250 330 236M${340 + moved} 180 390 196M${380 + moved} 256 430 240`}
        />
        <g class="slides" style={{ transform: `translateX(${isPlungerIn ? 0 : -96}px)` }}>
          <path class="plunger" d="M-40 142H202V288H-40ZM-40 190H202M-40 240H202" />
        </g>
        <path class="shade" d="M30 22H300V40H30Z" />
        <path
          class={`pawl ${isPawlIn ? 'moving' : ''}`}
          d={isPawlIn ? 'M262 12H286V40H262Z' : 'M262-6H286V14H262Z'}
        />
        <g class="slides" style={{ transform: `translateY(${isNeedleUp ? -284 : 0}px)` }}>
          <path
            class={isNeedleUp || station.id === 'needleBack' ? 'moving' : ''}
            d="M144 344Q146 326 152 326 158 326 160 344L172 470H148Z"
          />
        </g>
        {strands.map((path) => (
          <Rope key={path} path={path} />
        ))}
        <g class="turns" style={{ transform: `translate(116px, 92px) rotate(${discDeg}deg)` }}>
          <circle r="38" class={station.id === 'clamped' ? 'moving' : ''} />
          {[0, 90, 180, 270].map((angle) => (
            <path key={angle} class="notch" d="M-8-40-5-24Q0-20 5-24L8-40Z" transform={`rotate(${angle})`} />
          ))}
          <circle class="solid" r="6" />
        </g>
        <path d="M66 74 82 70Q82 116 116 138L110 152Q62 124 66 74Z" />
        <g class="turns" style={{ transform: `translate(206px, 66px) rotateY(${billhookDeg % 360}deg)` }}>
          <path
            class={station.id === 'loop' ? 'moving' : ''}
            d="M-12-26H10V18Q34 22 46 42 48 52 38 52 24 38 8 40-14 40-14 20Z"
          />
        </g>
        <g class="slides" style={{ transform: isFingerOver ? 'translate(36px, -30px)' : 'none' }}>
          <path class={isFingerOver ? 'moving' : ''} d="M20 196Q90 196 124 160L136 172Q96 212 20 212Z" />
        </g>
        <g class="slides" style={{ transform: isKnifeThrough ? 'translate(-86px, 6px)' : 'none' }}>
          <path
            class={isKnifeThrough ? 'moving' : ''}
            d="M316 60Q322 128 268 122L246 112 262 106Q298 108 298 60Z"
          />
        </g>
        {knot ? (
          <g transform={`translate(${knot.x} ${knot.y})`}>
            <path class="knot-body" d="M-14 0Q-14-15 0-15 16-15 15 0 14 15 0 15-14 15-14 0Z" />
            <path class="line knot-turns" d="M-8-9 8 10M1-13 13 4M-13 1-1 13" />
          </g>
        ) : null}
      </g>
      {moves ? (
        <g class="cycle-legend">
          <path class="swatch" d="M216 338H244V366H216Z" />
          <text x="256" y="364">
            {moves}
          </text>
        </g>
      ) : null}
    </svg>
  );
}

function pose(differs: Partial<Pose> & Pick<Pose, 'strands'>): Pose {
  return {
    isPlungerIn: false,
    isNeedleUp: false,
    isFingerOver: false,
    discDeg: 0,
    billhookDeg: 0,
    isKnifeThrough: false,
    isPawlIn: false,
    ...differs,
  };
}
