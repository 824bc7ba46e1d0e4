import type { Hypothesis } from '../../flows/diagnosis/beliefs.ts';
import { familyById } from '../../flows/families/all.ts';
import type { JobContext } from '../../flows/job-context.ts';
import { checkMeasureOf } from '../../flows/machine-values.ts';
import type { JobSnapshot } from '../../flows/prompt.ts';
import type { PartLine, WhichSide } from './card.ts';
import { findingText } from './findings.ts';
import { answersThatSpeakFor, causeText } from './suspects.ts';
import { measurementText, sentence } from './words.ts';

/** A named part is bought one a knotter; what is bought by the set or by the ball is left for the buyer to fill in. */
const BOUGHT_BY_THE_SET = /(s|twine)$/;

/** Parts that repairs fitted, and those a named cause would take that was not put right here. */
export function partLines({ context }: JobSnapshot, side: WhichSide | undefined): readonly PartLine[] {
  const { repairs, next } = context;
  const fitted = repairs.flatMap((repair) => partsFor(repair, 'forRepairDone', context, side));
  const isRepaired = repairs.some(
    ({ cause, family }) => next.kind === 'name' && cause === next.cause && family === next.family,
  );
  return next.kind === 'name' && !isRepaired
    ? [...fitted, ...partsFor(next, 'toOrder', context, side)]
    : fitted;
}

function partsFor(
  hypothesis: Hypothesis,
  state: PartLine['state'],
  context: JobContext,
  side: WhichSide | undefined,
): readonly PartLine[] {
  const readings = answersThatSpeakFor(hypothesis, context.answers)
    .filter(({ question }) => question.startsWith('check.'))
    .map((answer) => [findingText(answer), limitText(answer, context)].filter(Boolean).join(' '));
  const reason = [sentence(causeText(hypothesis)), ...readings].join(' ');
  return (familyById(hypothesis.family).causes[hypothesis.cause]?.remedy.parts ?? []).map((name) => ({
    name,
    ...(side ? { side } : {}),
    ...(BOUGHT_BY_THE_SET.test(name) ? {} : { quantity: side === 'both' ? 2 : 1 }),
    reason,
    state,
    // Without the part the machine does not tie; one taken from stock has to be there for the next cutting.
    urgency: state === 'toOrder' ? 'now' : 'beforeNextCutting',
  }));
}

/** What a measured value was held against. */
function limitText(
  { question, measurement }: JobContext['answers'][number],
  { ownBands }: JobContext,
): string {
  if (!measurement) return '';
  const measured = checkMeasureOf(question, ownBands);
  if (!measured) return '';
  return measured.own
    ? `(Limit of this machine: ${measured.own.limits.map(measurementText).join(' to ')}, from ${measured.own.source}.)`
    : `(${measured.typically})`;
}
