import type { Answer, QuestionId } from '../../flows/diagnosis/answer.ts';
import { EVIDENCE, type EvidenceId, type EvidenceQuestion } from '../../flows/diagnosis/evidence.ts';
import { familyById } from '../../flows/families/all.ts';
import { type Check, FAMILY_IDS, type FamilyId } from '../../flows/families/family.ts';
import { PARTS, type PartId } from '../../flows/knotter.ts';
import { type MachineBand, machineBandFor } from '../../flows/machine-values.ts';
import { ruleOf } from '../../grammar/lexicon.ts';
import type { RetracedStep } from '../records/replay.ts';
import type { Finding } from './card.ts';
import { measurementText, sentence } from './words.ts';

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
export function findingOf(
  { answer, atMs }: DatedAnswer,
  ownBands: readonly MachineBand[] = [],
): Finding | undefined {
  const asked = askedBy(answer.question);
  if (!asked || tellsNothing(answer)) return undefined;
  const finding = {
    atMs,
    part: asked.question.look,
    asked: questionIn(asked.question.ask),
    answer: ruleOf(answer.said).readBack,
  };
  if (asked.kind === 'evidence') return { kind: 'evidence', ...finding, pointsAtFault: false };
  const { answers, measure } = asked.question;
  const own = machineBandFor(asked, ownBands);
  return {
    kind: 'check',
    ...finding,
    pointsAtFault: answers.some(({ meaning, pointsAtFault }) => meaning === answer.said && pointsAtFault),
    ...(measure && answer.measurement
      ? {
          measured: {
            value: answer.measurement,
            typically: measure.typically,
            provenance: measure.provenance,
            ...(own ? { own } : {}),
          },
        }
      : {}),
  };
}

/** A finding in one line: "Twine holder: Packed.", with the number where there was one. */
export function findingText(answer: Answer): string {
  if (answer.question.startsWith('repair.')) {
    return answer.said === 'tie.missed' ? 'It missed again after a repair.' : 'A repair was set aside.';
  }
  const asked = askedBy(answer.question);
  const value = answer.measurement ? ` ${sentence(measurementText(answer.measurement))}` : '';
  const where = asked ? `${partName(asked.question.look)}: ` : '';
  return `${where}${ruleOf(answer.said).readBack}${value}`;
}

/** What was asked, in the words of the question itself. */
export function askedText(question: QuestionId): string | undefined {
  const asked = askedBy(question);
  return asked && `${partName(asked.question.look)}: ${questionIn(asked.question.ask)}`;
}

type Asked =
  | { readonly kind: 'evidence'; readonly question: EvidenceQuestion }
  | {
      readonly kind: 'check';
      readonly question: Check;
      readonly family: FamilyId;
      readonly check: string;
    };

function askedBy(id: QuestionId): Asked | undefined {
  const [kind, first = '', second = ''] = id.split('.');
  if (kind === 'evidence') return { kind, question: EVIDENCE[first as EvidenceId] };
  const family = FAMILY_IDS.find((each) => each === first);
  const question = kind === 'check' && family ? familyById(family).checks[second] : undefined;
  return question && family && { kind: 'check', question, family, check: second };
}

/** A part with its first letter large. */
export function partName(part: PartId): string {
  return sentence(PARTS[part]).slice(0, -1);
}

/** The instruction before a question is for the voice; paper needs the question, and the half that goes before "or". */
function questionIn(text: string): string {
  const sentences = (text.match(/[^.?]+[.?]/g) ?? [text]).map((each) => each.trim());
  return sentences.slice(sentences.at(-1)?.startsWith('Or ') ? -2 : -1).join(' ');
}
