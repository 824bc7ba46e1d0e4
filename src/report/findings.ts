import type { Answer, QuestionId } from '../../flows/diagnosis/answer.ts';
import { EVIDENCE, type EvidenceId, type EvidenceQuestion } from '../../flows/diagnosis/evidence.ts';
import { familyById } from '../../flows/families/all.ts';
import { type Check, FAMILY_IDS, type Measure } from '../../flows/families/family.ts';
import { PARTS } from '../../flows/knotter.ts';
import { ruleOf } from '../../grammar/lexicon.ts';
import type { RetracedStep } from '../records/replay.ts';
import type { Finding, MeasuredFinding } from './card.ts';
import { measurementText, sentence, unitSign } from './words.ts';

/** Answers to a question that tell nothing of the machine. */
const TELLS_NOTHING: readonly Answer['said'][] = ['notSure', 'cannotSee', 'skip'];

/** When each answer that still stands was given, in order. */
export interface DatedAnswer {
  readonly answer: Answer;
  readonly atMs: number;
}

/** The answers that stand at the end of a job, each with the time it was given. */
export function datedAnswers(steps: readonly RetracedStep[]): readonly DatedAnswer[] {
  return (steps.at(-1)?.after.context.answers ?? []).map((answer) => {
    const given = steps.find(({ after }) => after.context.answers.includes(answer));
    return { answer, atMs: given?.entry.atMs ?? 0 };
  });
}

export function tellsNothing({ said }: Answer): boolean {
  return TELLS_NOTHING.includes(said);
}

/** What was found, by evidence or by a check; undefined for the opening words, a repair, or an answer that tells nothing. */
export function findingOf({ answer, atMs }: DatedAnswer): Finding | undefined {
  const asked = askedBy(answer.question);
  if (!asked || tellsNothing(answer)) return undefined;
  const finding = {
    atMs,
    part: asked.question.look,
    asked: lastSentence(asked.question.ask),
    answer: ruleOf(answer.said).readBack,
  };
  if (asked.kind === 'evidence') return { kind: 'evidence', ...finding, pointsAtFault: false };
  const { answers, measure } = asked.question;
  return {
    kind: 'check',
    ...finding,
    pointsAtFault: answers.some(({ meaning, pointsAtFault }) => meaning === answer.said && pointsAtFault),
    ...(measure && answer.measurement
      ? { measured: measuredFinding(answer.measurement, measure, asked.question) }
      : {}),
  };
}

/** A finding in one line: "twine holder: Packed.", with the number where there was one. */
export function findingText(answer: Answer): string {
  const asked = askedBy(answer.question);
  const value = answer.measurement ? ` ${sentence(measurementText(answer.measurement))}` : '';
  return `${asked ? `${PARTS[asked.question.look]}: ` : ''}${ruleOf(answer.said).readBack}${value}`;
}

/** What was asked, in the words of the question itself. */
export function askedText(question: QuestionId): string | undefined {
  const asked = askedBy(question);
  return asked && `${PARTS[asked.question.look]}: ${lastSentence(asked.question.ask)}`;
}

type Asked =
  | { readonly kind: 'evidence'; readonly question: EvidenceQuestion }
  | { readonly kind: 'check'; readonly question: Check };

function askedBy(id: QuestionId): Asked | undefined {
  const [kind, first = '', second = ''] = id.split('.');
  if (kind === 'evidence') return { kind, question: EVIDENCE[first as EvidenceId] };
  const family = FAMILY_IDS.find((each) => each === first);
  const question = kind === 'check' && family ? familyById(family).checks[second] : undefined;
  return question && { kind: 'check', question };
}

/** The instruction before a question is for the voice; paper needs the question. */
function lastSentence(text: string): string {
  return (
    text
      .match(/[^.?]+[.?]/g)
      ?.at(-1)
      ?.trim() ?? text
  );
}

function measuredFinding(
  value: MeasuredFinding['value'],
  measure: Measure,
  { answers }: Check,
): MeasuredFinding {
  return {
    value,
    band: bandsInOrder(measure, answers).join(' or '),
    bandStanding: `Typical, ${measure.provenance}. Check the operator’s manual of your machine.`,
  };
}

/** The bands that point at no fault, as text. */
function bandsInOrder({ bands, plausible }: Measure, answers: Check['answers']): readonly string[] {
  return bands.flatMap(({ below, means }, index) => {
    if (answers.some(({ meaning, pointsAtFault }) => meaning === means && pointsAtFault)) return [];
    const from = bands[index - 1]?.below;
    if (from && below) return [`${from.amount} to ${measurementText(below)}`];
    if (below) return [`under ${measurementText(below)}`];
    return from ? [`${measurementText(from)} or more`] : [`any ${unitSign(plausible.low.unit)}`];
  });
}
