import type { JSX } from 'preact';
import type { MeaningId } from '../../grammar/lexicon.ts';
import './answer-picture.css';
import { Rope } from './rope.tsx';

/**
 * What an answer looks like, for the button that gives it. The words on the button say the same, so the picture is
 * left out for screen readers. Undefined where words do it better.
 */
export function answerPicture(meaning: MeaningId): JSX.Element | undefined {
  const drawn = DRAWN[meaning];
  return (
    drawn && (
      <svg class="answer-picture" viewBox="0 0 96 96" aria-hidden="true" focusable="false">
        <g class="shape">{drawn}</g>
      </svg>
    )
  );
}

/**
 * The corner of the bale where the knotter sits, seen from the left, travelling to the left: the held strand comes
 * along the top from the right, the needle's strand up the front from below.
 */
const HELD_STRAND = 'M96 38H';
const NEEDLE_STRAND = 'M26 96V';

function Corner(): JSX.Element {
  return <path class="shade corner" d="M38 50H100V100H38Z" />;
}

function Knot({ x, y }: { readonly x: number; readonly y: number }): JSX.Element {
  return (
    <g transform={`translate(${x} ${y})`}>
      <path class="knot-body" d="M-12 0Q-12-13 0-13 14-13 13 0 12 13 0 13-12 13-12 0Z" />
      <path class="line knot-turns" d="M-7-8 7 9M1-12 12 3M-12 1-1 12" />
    </g>
  );
}

function Billhook(): JSX.Element {
  return <path class="solid" d="M30 0H42V14Q62 16 68 32 70 38 62 38 54 26 42 28 30 28 30 16Z" />;
}

/** A strand coming in from the right, whose end is shown large; both ends of a miss look alike, so one is drawn. */
function Strand({ to }: { readonly to: number }): JSX.Element {
  return <path class="strand-end" d={`M100 34H${to}V62H100Z`} />;
}

const DRAWN: Readonly<Partial<Record<MeaningId, JSX.Element>>> = {
  'knot.frontEnd': (
    <>
      <Corner />
      <Rope path={`${HELD_STRAND}58`} />
      <Rope path={`${NEEDLE_STRAND}38`} />
      <Knot x={26} y={30} />
    </>
  ),
  'knot.topEnd': (
    <>
      <Corner />
      <Rope path={`${HELD_STRAND}50`} />
      <Rope path={`${NEEDLE_STRAND}56`} />
      <Knot x={46} y={36} />
    </>
  ),
  'knot.neither': (
    <>
      <Corner />
      <Rope path={`${HELD_STRAND}60`} />
      <Rope path={`${NEEDLE_STRAND}58`} />
    </>
  ),
  'knot.onBillhook': (
    <>
      <Corner />
      <Rope path={`${HELD_STRAND}66L50 30`} />
      <Rope path={`${NEEDLE_STRAND}52L46 32`} />
      <Knot x={44} y={34} />
      <Billhook />
    </>
  ),
  'knot.made': (
    <>
      <Corner />
      <Rope path="M96 38H82" />
      <Rope path="M58 38H44Q26 38 26 56V96" />
      <Knot x={36} y={42} />
      <path class="line burst" d="M66 26 62 16M70 50 70 60M76 26 82 16" />
    </>
  ),
  'knot.oneStrand': (
    <>
      <Corner />
      <Rope path={`${HELD_STRAND}50`} />
      <Knot x={46} y={36} />
      <path class="line missing" d="M26 94V50" />
    </>
  ),
  'knot.noCycle': (
    <>
      <Corner />
      <Rope path="M96 38H44Q26 38 26 56V96" />
      <path class="line burst" d="M8 20 30 42M30 20 8 42" />
    </>
  ),
  'end.square': <path class="strand-end" d="M100 30H24V66H100ZM24 42H84M34 54H94" />,
  'end.pinched': (
    <path
      class="strand-end"
      d="M100 34H66L54 42 12 26 40 42 8 38 40 46 4 48 40 50 8 58 40 54 12 70 54 54 66 62H100Z"
    />
  ),
  'end.torn': (
    <>
      <Strand to={74} />
      <path
        class="line fibres"
        d="M76 38Q50 40 30 30M76 44Q40 46 6 40M76 50Q50 50 22 56M76 56Q56 58 38 68M76 60 58 74"
      />
    </>
  ),
  'end.curled': (
    <path class="line curl" d="M100 48H70L60 36 50 54Q34 74 20 56 10 36 30 28 46 26 44 42 40 52 30 48" />
  ),
  'which.left': <Knotters bad={['left']} />,
  'which.right': <Knotters bad={['right']} />,
  'which.both': <Knotters bad={['left', 'right']} />,
  'which.alternates': (
    <>
      <Knotters bad={[]} />
      <path class="line" d="M30 22H66M66 22 56 12M66 22 56 32M30 22 40 12M30 22 40 32" />
    </>
  ),
};

/** A bale from behind, a string on each side; a missed string is drawn broken. */
function Knotters({ bad }: { readonly bad: readonly ('left' | 'right')[] }): JSX.Element {
  return (
    <>
      <path class="shade" d="M10 42H86V92H10Z" />
      {(['left', 'right'] as const).map((side) => {
        const x = side === 'left' ? 30 : 66;
        return bad.includes(side) ? (
          <g key={side}>
            <Rope path={`M${x} 92V76`} />
            <path class="line burst" d={`M${x - 12} 44 ${x + 12} 68M${x + 12} 44 ${x - 12} 68`} />
          </g>
        ) : (
          <g key={side}>
            <Rope path={`M${x} 92V42`} />
            <Knot x={x} y={46} />
          </g>
        );
      })}
    </>
  );
}
