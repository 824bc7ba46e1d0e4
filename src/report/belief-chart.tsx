import type { JSX } from 'preact';
import type { BeliefPath } from './card.ts';
import { percentText, sentence } from './words.ts';

const WIDTH = 600;
const LEFT = 44;
const RIGHT = 590;
const TOP = 10;
const BOTTOM = 130;
const MOST_TICKS = 15;

/** How sure the search was after each answer, as lines told apart by their dashes, so that they survive a copier. */
export function BeliefChart({ path }: { readonly path: BeliefPath }): JSX.Element {
  const { answers, causes } = path;
  const x = (step: number): number => LEFT + (step / Math.max(1, answers.length)) * (RIGHT - LEFT);
  const y = (probability: number): number => BOTTOM - probability * (BOTTOM - TOP);
  return (
    <figure class="beliefs">
      <svg class="chart" viewBox={`0 0 ${WIDTH} 158`} role="img" aria-label={beliefSentence(path)}>
        {[0, 0.5, 1].map((share) => (
          <g key={share}>
            <path d={`M${LEFT} ${y(share)}H${RIGHT}`} class="grid" />
            <text x={LEFT - 6} y={y(share) + 5} text-anchor="end">
              {share * 100}
            </text>
          </g>
        ))}
        {ticks(answers.length).map((step) => (
          <text key={step} x={x(step)} y={BOTTOM + 20} text-anchor="middle">
            {step}
          </text>
        ))}
        {causes.map(({ cause, probabilities }, index) => (
          <polyline
            key={cause}
            class={`belief belief-${index}`}
            points={probabilities.map((p, step) => `${x(step)},${y(p)}`).join(' ')}
          />
        ))}
      </svg>
      <figcaption>
        Percent sure after each answer:{' '}
        {causes.map(({ cause, probabilities }, index) => (
          <span key={cause} class="key">
            <svg viewBox="0 0 40 8" aria-hidden="true">
              <path d="M0 4H40" class={`belief belief-${index}`} />
            </svg>
            {cause}, {percentText(probabilities.at(-1) ?? 0)}
          </span>
        ))}
      </figcaption>
    </figure>
  );
}

/** The answers that are numbered on the axis: every one, or as many as leave room to be read. */
function ticks(answers: number): readonly number[] {
  const every = Math.ceil(answers / MOST_TICKS);
  return Array.from({ length: Math.floor(answers / every) || 0 }, (_, index) => (index + 1) * every);
}

/** What the chart shows, in words. */
export function beliefSentence({ answers, causes }: BeliefPath): string {
  const paths = causes.map(
    ({ cause, probabilities }) =>
      `${cause}: ${percentText(probabilities[0] ?? 0)} at the start, ${percentText(probabilities.at(-1) ?? 0)} after ${answers.length} answers`,
  );
  return paths.map(sentence).join(' ');
}
