import type { JSX } from 'preact';
import { HEARING_GRADES, type HearingGrade } from '../../grammar/hearing-grade.ts';

const BAR_STEP = 10;
const BAR_HEIGHTS = [10, 19, 28] as const;

/** How well the ears hear: a bar for each grade over too loud, which is crossed out, and the word. */
export function HearingSign({ grade }: { readonly grade: HearingGrade }): JSX.Element {
  const bars = HEARING_GRADES.indexOf(grade);
  return (
    <span class="hearing-sign" data-grade={grade}>
      <svg viewBox="0 0 30 30" aria-hidden="true">
        {BAR_HEIGHTS.map((height, bar) => (
          <rect
            key={height}
            class={bar < bars ? 'hearing-bar' : 'hearing-gap'}
            x={bar * BAR_STEP + 1.5}
            y={29 - height}
            width={7}
            height={height}
          />
        ))}
        {bars === 0 ? <path class="hearing-cross" d="M3 3 27 27M27 3 3 27" /> : null}
      </svg>{' '}
      Hearing: {grade}
    </span>
  );
}
