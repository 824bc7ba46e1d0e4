import { EVIDENCE, type EvidenceQuestion } from '../../flows/diagnosis/evidence.ts';
import { FAMILIES } from '../../flows/families/all.ts';
import type { Expecting } from '../../grammar/expecting.ts';
import { SYMPTOM_MEANINGS } from '../../grammar/lexicon.ts';

/** What the opening, every evidence question and every check listens for, by name. */
export const INQUIRY_STATES: readonly (readonly [name: string, expecting: Expecting])[] = [
  ['opening', { meanings: SYMPTOM_MEANINGS }],
  ...Object.entries<EvidenceQuestion>(EVIDENCE).map(
    ([id, { answers }]) =>
      [`evidence ${id}`, { meanings: answers.flatMap(({ meanings }) => meanings) }] as const,
  ),
  ...FAMILIES.flatMap(({ id, checks }) =>
    Object.entries(checks).map(([check, { answers, measure }]): readonly [string, Expecting] => [
      `${id} ${check}`,
      {
        meanings: answers.map(({ meaning }) => meaning),
        ...(measure ? { value: { kind: 'measurement', dimension: measure.dimension } } : {}),
      },
    ]),
  ),
];
