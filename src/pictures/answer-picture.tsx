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
  return <path class="steel" d="M26 2H42V18Q66 20 74 38 76 46 66 46 56 34 42 36 26 36 26 22Z" />;
}

/** A strand coming in from the right, whose end is shown large; both ends of a miss look alike, so one is drawn. */
function Strand({ to }: { readonly to: number }): JSX.Element {
  return <path class="strand-end" d={`M100 34H${to}V62H100Z`} />;
}

/** A kink, then a curl that springs back on itself. */
const CURL = 'M104 52H76L64 38 54 58Q40 80 22 66 6 48 22 30 40 16 50 32 54 46 42 50';

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
      <Billhook />
      <Rope path={`${HELD_STRAND}80L64 46`} />
      <Rope path={`${NEEDLE_STRAND}66L50 48`} />
      <Knot x={57} y={45} />
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
      <Cross x={19} y={31} r={11} />
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
    <>
      <path class="line curl-edge" d={CURL} />
      <path class="line curl" d={CURL} />
    </>
  ),
  'next.tiesItself': <Row of="xat" />,
  'next.needsHelp': <Row of="xnt" />,
  'next.never': <Row of="xxx" />,
  'when.mostBales': <Row of="xxtxxx" />,
  'when.random': <Row of="ttxtxt" />,
  'when.ballChange': <Row of="bxtttt" />,
  'when.firstBales': <Row of="xxtttt" />,
  'when.heavyCrop': (
    <>
      <path class="shade" d="M2 92Q6 40 22 48 34 26 46 44 58 40 60 92Z" />
      <path class="shade" d="M64 92Q70 74 80 78 90 76 94 92Z" />
      <Cross x={31} y={22} r={13} />
    </>
  ),
  'needles.quiet': <path class="steel" d="M86 92Q22 88 12 14L22 8Q34 72 90 76Z" />,
  'needles.trouble': (
    <>
      <path class="steel" d="M86 92Q44 90 34 62L8 46 14 36 44 54Q54 74 90 76Z" />
      <path class="line burst" d="M34 34 30 20M48 42 56 28M20 28 10 18" />
    </>
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
            <Cross x={x} y={56} r={12} />
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

function Cross({ x, y, r }: { readonly x: number; readonly y: number; readonly r: number }): JSX.Element {
  return (
    <path class="line burst" d={`M${x - r} ${y - r} ${x + r} ${y + r}M${x + r} ${y - r} ${x - r} ${y + r}`} />
  );
}

/** What a place in a row of bales shows: a bale that missed, one that tied, an arrow, a needle threaded by hand, a new ball. */
type Place = 'x' | 't' | 'a' | 'n' | 'b';

/** Bales one after the other, up to six in two lines, the first at the top left. */
function Row({ of }: { readonly of: string }): JSX.Element {
  const places = [...of] as Place[];
  const top = places.length > 3 ? 8 : 30;
  return (
    <>
      {places.map((place, at) => (
        <g key={at} transform={`translate(${2 + 32 * (at % 3)} ${top + 44 * Math.floor(at / 3)})`}>
          <RowPlace place={place} />
        </g>
      ))}
    </>
  );
}

function RowPlace({ place }: { readonly place: Place }): JSX.Element {
  switch (place) {
    case 'x':
      return (
        <>
          <path class="shade small" d="M0 4H28V36H0Z" />
          <Cross x={14} y={20} r={9} />
        </>
      );
    case 't':
      return (
        <>
          <path class="shade small" d="M0 4H28V36H0Z" />
          <path class="string" d="M14 4V36" />
          <circle class="knot-body small" cx="14" cy="8" r="7" />
        </>
      );
    case 'a':
      return <path class="line" d="M4 20H24M24 20 15 11M24 20 15 29" />;
    case 'n':
      return (
        <>
          <path class="steel small" d="M4 38Q6 14 22 4L26 10Q14 18 12 38Z" />
          <path class="string" d="M28 34Q30 12 20 10" />
        </>
      );
    case 'b':
      return (
        <>
          <circle class="knot-body small" cx="14" cy="20" r="14" />
          <path class="line small" d="M14 20a4 4 0 1 1 4 4M8 14a9 9 0 1 0 14 1" />
        </>
      );
  }
}
