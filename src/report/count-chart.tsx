import type { JSX } from 'preact';
import { type BaleCount, type BaleRun, countSentence } from './count-lines.ts';
import { percentText } from './words.ts';

const WIDTH = 600;
const LEFT = 70;
const RIGHT = 590;
const TOP = 14;
const BOTTOM = 150;

/** Missed bales run by run, each with its exact band, as a drawing that also reads as sentences. */
export function CountChart({ count }: { readonly count: BaleCount }): JSX.Element {
  const { runs } = count;
  const highest = Math.max(...runs.map(({ upper }) => upper));
  const scaleEnd = [0.05, 0.1, 0.2, 0.5].find((end) => highest <= end) ?? 1;
  const y = (rate: number) => BOTTOM - (rate / scaleEnd) * (BOTTOM - TOP);
  const x = (index: number) => LEFT + ((index + 0.5) / runs.length) * (RIGHT - LEFT);
  return (
    <svg class="chart" viewBox={`0 0 ${WIDTH} 186`} role="img" aria-label={chartText(count)}>
      {[0, 0.5, 1].map((share) => (
        <g key={share}>
          <path d={`M${LEFT - 6} ${y(share * scaleEnd)}H${RIGHT}`} class={share === 0 ? 'axis' : 'grid'} />
          <text x={LEFT - 12} y={y(share * scaleEnd) + 5} text-anchor="end">
            {share === 0 ? '0' : percentText(share * scaleEnd)}
          </text>
        </g>
      ))}
      {runs.map(({ from, to, rate, lower, upper }, index) => (
        <g key={from}>
          <path
            d={`M${x(index) - 8} ${y(upper)}h16M${x(index)} ${y(upper)}V${y(lower)}M${x(index) - 8} ${y(lower)}h16`}
            class="band"
          />
          <circle cx={x(index)} cy={y(rate)} r="6" class="dot" />
          {runs.length <= 6 || index % 2 === 0 ? (
            <text x={x(index)} y={BOTTOM + 24} text-anchor="middle">
              {from}–{to}
            </text>
          ) : null}
        </g>
      ))}
    </svg>
  );
}

/** What the chart shows, in words. */
export function chartText(count: BaleCount): string {
  return [countSentence(count), ...count.runs.map(runText)].join(' ');
}

function runText({ from, to, missed, rate, lower, upper }: BaleRun): string {
  return `Bales ${from} to ${to}: ${missed} missed, ${percentText(rate)}, between ${percentText(lower)} and ${percentText(upper)}.`;
}
