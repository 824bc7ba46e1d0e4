import type { JSX } from 'preact';
import type { ProofLine } from './card.ts';
import { percentText } from './words.ts';

const WIDTH = 600;
const LEFT = 150;
const RIGHT = 585;
const BEFORE_Y = 28;
const AFTER_Y = 62;
const AXIS_Y = 84;

/** The miss rate before and after a repair, each with its band, as a drawing that also reads as a sentence. */
export function MissRateChart({ proof }: { readonly proof: ProofLine }): JSX.Element {
  const { before, atMost } = proof;
  const highest = Math.max(before.counted ? before.upper : before.rate, atMost ?? 0);
  const scaleEnd = [0.05, 0.1, 0.2, 0.5].find((end) => highest <= end) ?? 1;
  const x = (rate: number): number => LEFT + (rate / scaleEnd) * (RIGHT - LEFT);
  return (
    <svg class="chart" viewBox={`0 0 ${WIDTH} 112`} role="img" aria-label={missRateSentence(proof)}>
      <text x={LEFT - 12} y={BEFORE_Y + 5} text-anchor="end">
        before
      </text>
      <text x={LEFT - 12} y={AFTER_Y + 5} text-anchor="end">
        after
      </text>
      {before.counted ? <Band from={x(before.lower)} to={x(before.upper)} y={BEFORE_Y} /> : null}
      <circle cx={x(before.rate)} cy={BEFORE_Y} r="6" class={before.counted ? 'dot' : 'dot assumed'} />
      {atMost === undefined ? null : <Band from={x(0)} to={x(atMost)} y={AFTER_Y} />}
      <path d={`M${LEFT} ${AXIS_Y}H${RIGHT}`} class="axis" />
      {[0, 0.5, 1].map((share) => (
        <g key={share}>
          <path d={`M${x(share * scaleEnd)} ${AXIS_Y}v5`} class="axis" />
          <text x={x(share * scaleEnd)} y={AXIS_Y + 22} text-anchor={share === 1 ? 'end' : 'middle'}>
            {share === 0 ? '0' : percentText(share * scaleEnd)}
          </text>
        </g>
      ))}
    </svg>
  );
}

/** What the chart shows, in words. */
export function missRateSentence({ before, atMost, clean, confidence }: ProofLine): string {
  const was = before.counted
    ? `Before: ${before.misses} of ${before.ties} ties missed, ${percentText(before.rate)}, with ${percentText(confidence)} confidence between ${percentText(before.lower)} and ${percentText(before.upper)}.`
    : `Before: nobody counted; ${percentText(before.rate)} is taken for granted, an expert estimate.`;
  const is =
    atMost === undefined
      ? 'After: nothing is proved.'
      : `After: 0 of ${clean} missed, with ${percentText(confidence)} confidence at most ${percentText(atMost)}.`;
  return `${was} ${is}`;
}

function Band({
  from,
  to,
  y,
}: {
  readonly from: number;
  readonly to: number;
  readonly y: number;
}): JSX.Element {
  return <path d={`M${from} ${y - 8}v16M${from} ${y}H${to}M${to} ${y - 8}v16`} class="band" />;
}
