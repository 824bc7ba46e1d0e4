import type { JSX } from 'preact';
import { HEARING_GRADES, type HearingGrade } from '../../grammar/hearing-grade.ts';

const BAR_STEP = 10;
const BAR_HEIGHTS = [10, 19, 28] as const;

/** How well the ears hear: a bar for each grade over too loud, which is a cross, and the word. */
export function HearingSign({ grade }: { readonly grade: HearingGrade }): JSX.Element {
  const isTooLoud = grade === 'too loud';
  return (
    <span class="hearing-sign" data-grade={grade}>
      <svg viewBox="0 0 30 30" aria-hidden="true">
        {isTooLoud ? <path class="hearing-cross" d="M3 3 27 27M27 3 3 27" /> : bars(grade)}
      </svg>{' '}
      {isTooLoud ? 'Too loud' : `Hearing: ${grade}`}
    </span>
  );
}

function bars(grade: HearingGrade): JSX.Element[] {
  return BAR_HEIGHTS.map((height, bar) => (
    <rect
      key={height}
      class={bar < HEARING_GRADES.indexOf(grade) ? 'hearing-bar' : 'hearing-gap'}
      x={bar * BAR_STEP + 1.5}
      y={29 - height}
      width={7}
      height={height}
    />
  ));
}
