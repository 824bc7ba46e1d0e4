import fc from 'fast-check';
import {
  type Answer,
  checkQuestion,
  evidenceQuestion,
  repairQuestion,
} from '../../../flows/diagnosis/answer.ts';
import { EVIDENCE, type EvidenceId, type EvidenceQuestion } from '../../../flows/diagnosis/evidence.ts';
import { FAMILIES } from '../../../flows/families/all.ts';
import type { MeaningId } from '../../../grammar/lexicon.ts';
import { SYMPTOM_MEANINGS } from '../../../grammar/lexicon.ts';

/** What may be said to any question without telling anything. */
export const NOTHING_LEARNT = ['notSure', 'cannotSee', 'skip'] as const satisfies readonly MeaningId[];

/** Every question of a job, with everything that may be said to it. */
export const QUESTIONS: readonly {
  readonly question: Answer['question'];
  readonly said: readonly MeaningId[];
}[] = [
  { question: 'symptom', said: [...SYMPTOM_MEANINGS, 'notSure'] },
  ...(Object.keys(EVIDENCE) as EvidenceId[]).map((id) => {
    const { answers }: EvidenceQuestion = EVIDENCE[id];
    return {
      question: evidenceQuestion(id),
      said: [...answers.flatMap(({ meanings }) => meanings), ...NOTHING_LEARNT],
    };
  }),
  ...FAMILIES.flatMap(({ id, causes, checks }) => [
    ...Object.entries(checks).map(([check, { answers }]) => ({
      question: checkQuestion(id, check),
      said: [...answers.map(({ meaning }) => meaning), ...NOTHING_LEARNT],
    })),
    ...Object.keys(causes).map((cause) => ({
      question: repairQuestion(id, cause),
      said: ['tie.missed', 'skip'] satisfies MeaningId[],
    })),
  ]),
];

/** Any one recorded answer. */
export const anyAnswer: fc.Arbitrary<Answer> = fc
  .constantFrom(...QUESTIONS)
  .chain(({ question, said }) => fc.constantFrom(...said).map((meaning) => ({ question, said: meaning })));

/** The answers of a job, each question answered at most once, in any order and in any combination. */
export const anyJob: fc.Arbitrary<readonly Answer[]> = fc.uniqueArray(anyAnswer, {
  selector: ({ question }) => question,
  maxLength: 24,
});
