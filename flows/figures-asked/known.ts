import type { JobContext } from '../job-context.ts';
import { missCountOf, type Tally } from '../miss-log/tally.ts';
import type { WorkedFigure } from './dialogue.ts';
import { inputOf } from './inputs.ts';
import { FIGURES } from './questions.ts';
import { type FigureValues, isPossible } from './values.ts';

/**
 * What a figure need not ask for, because it was told before. What the job itself found wins over what was said for
 * another figure, and that over what is kept of the machine.
 * @param figure the figure that is asked; its own earlier values are asked anew, so that a slip can be put right
 * @param tally the bales counted in this job
 */
export function knownValues(
  figure: WorkedFigure['figure'],
  context: JobContext,
  worked: readonly Pick<WorkedFigure, 'figure' | 'values'>[],
  ofMachine: FigureValues,
  tally?: Tally,
): FigureValues {
  const fromFigures = worked
    .filter((earlier) => earlier.figure !== figure)
    .flatMap(
      ({ values }) => Object.entries(values) as [keyof FigureValues, FigureValues[keyof FigureValues]][],
    )
    .filter(([id]) => inputOf(id).stays);
  const goesOn = FIGURES[figure].goesOnFrom;
  const before = worked.findLast((earlier) => earlier.figure === goesOn)?.values ?? {};
  const all = {
    ...ofMachine,
    ...Object.fromEntries(fromFigures),
    ...before,
    ...ofCount(tally),
    ...ofJob(context),
  };
  // A file or an older app may bring what can no longer be true.
  return Object.fromEntries(
    Object.entries(all).filter(
      ([id, value]) => value !== undefined && isPossible(inputOf(id as keyof FigureValues).takes, value),
    ),
  );
}

/** What was counted bale by bale. */
function ofCount(tally: Tally | undefined): FigureValues {
  if (!tally || tally.bales.length === 0) return {};
  return {
    missCount: missCountOf(tally),
    leftMisses: tally.misses.left,
    rightMisses: tally.misses.right,
  };
}

function ofJob({ proof, repairs, next, looksLike }: JobContext): FigureValues {
  const counted = proof?.before ?? repairs.findLast((repair) => repair.proof?.before)?.proof?.before;
  const isDanger = looksLike === 'needlesStruck' || (next.kind === 'name' && next.family === 'needlesStruck');
  return {
    ...(counted ? { missCount: counted } : {}),
    ...(proof ? { cleanTies: proof.clean } : {}),
    // That the job does not look dangerous is no answer: it is asked.
    ...(isDanger ? { dangerSign: 'yes' } : {}),
  };
}
