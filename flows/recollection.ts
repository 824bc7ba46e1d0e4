import { ruleOf } from '../grammar/lexicon.ts';
import type { MissCount } from '../grammar/measurements.ts';
import type { NamedPart } from '../grammar/named-parts.ts';
import { type Say, sayMeasure, sayOutOf, saySide, sayWhole } from '../grammar/say.ts';
import type { Answer } from './diagnosis/answer.ts';
import { EVIDENCE, type EvidenceId, type EvidenceQuestion } from './diagnosis/evidence.ts';
import { familyById } from './families/all.ts';
import { type Check, FAMILY_IDS } from './families/family.ts';
import type { JobContext, Repair } from './job-context.ts';
import { PARTS, type PartId } from './knotter.ts';
import { LINES } from './lines.ts';
import { causeLine, sayHandOver, sayMeasurement } from './sayings.ts';

/** Findings read out at most; the card has them all. More than this is not listened to. */
const MOST_READ = 8;

export const RECALL_LINES = {
  record: 'This is the record so far.',
  counted: 'Bales counted with me, and missed:',
  nothingYet: 'Nothing is in the record yet.',
  faults: 'What points at a fault:',
  noFaults: 'Nothing found so far points at a fault.',
  inOrder: 'Checks found in order:',
  onTheCard: 'The rest is on the job card.',
  nothingAbout: 'You said nothing about that yet.',
  repairs: {
    done: 'That was put right, and is not proved.',
    proved: 'That was put right, and proved.',
    stillMisses: 'That was put right, and it still missed.',
  },
} as const;

/** "The twine holder:", before what was found there. */
export function placeLine(part: PartId): string {
  return `The ${PARTS[part]}:`;
}

/** What a person means by a part: every place that goes by the name. */
const PLACES: Readonly<Record<NamedPart, readonly PartId[]>> = {
  spring: ['twineHolder', 'knotterBrake', 'tripArm'],
  holder: ['twineHolder'],
  disc: ['twineDisc'],
  billhook: ['billhook', 'tongue'],
  knife: ['knifeArm'],
  wiper: ['wiper'],
  finger: ['twineFinger'],
  needle: ['needle', 'needleYoke'],
  pawl: ['pawl'],
  twine: ['twineBox', 'tensioner', 'twineGuides'],
  string: ['failedString'],
  bale: ['bale', 'densityRails', 'hayDogs'],
};

/**
 * The record in a minute: the fault, what was found and counted, what was done, and how it stands.
 * @param counted bale by bale in this job
 */
export function sayRecord(context: JobContext, counted?: MissCount): Say {
  const { answers, side, repairs, next } = context;
  const count = counted && counted.bales > 0 ? sayCounted(counted) : [];
  if (answers.length === 0)
    return count.length > 0 ? [RECALL_LINES.record, ...count] : [RECALL_LINES.nothingYet];
  const found = answers.flatMap((answer) => foundBy(answer) ?? []);
  const faults = found.filter(({ pointsAtFault }) => pointsAtFault);
  const inOrder = found.filter(({ isCheck, pointsAtFault }) => isCheck && !pointsAtFault).length;
  const symptom = answers.find(({ question }) => question === 'symptom');
  const isRepaired = repairs.some(({ family, cause }) => isNamed(next, family, cause));
  return [
    RECALL_LINES.record,
    ...(symptom ? [ruleOf(symptom.said).readBack] : []),
    ...(side ? saySide(side) : []),
    ...(faults.length > 0
      ? [RECALL_LINES.faults, ...faults.slice(-MOST_READ).flatMap(sayFound)]
      : [RECALL_LINES.noFaults]),
    ...(inOrder > 0 ? [RECALL_LINES.inOrder, ...sayWhole(inOrder)] : []),
    ...(faults.length > MOST_READ ? [RECALL_LINES.onTheCard] : []),
    ...count,
    ...(next.kind === 'name' && !isRepaired
      ? [
          causeLine(next.family, next.cause),
          LINES.iAm,
          ...sayMeasure(Math.min(99, Math.round(next.probability * 100)), 'percent'),
          LINES.sure,
        ]
      : []),
    ...repairs.flatMap(sayRepair),
    ...sayProofSoFar(context),
    ...sayHandOver(context),
  ];
}

/** What was done and how it stands, for the end of a job. */
export function sayOutcome(context: JobContext): Say {
  return [...context.repairs.flatMap(sayRepair), ...sayProofSoFar(context)];
}

/** What was said of a part, in the order it was said. */
export function sayAbout(part: NamedPart, { answers }: JobContext): Say {
  const found = answers
    .flatMap((answer) => foundBy(answer) ?? [])
    .filter(({ place }) => PLACES[part].includes(place));
  return found.length > 0 ? found.flatMap(sayFound) : [RECALL_LINES.nothingAbout];
}

interface Found {
  readonly answer: Answer;
  readonly place: PartId;
  readonly isCheck: boolean;
  readonly pointsAtFault: boolean;
}

/** What an answer found; undefined for the opening words and for repairs. */
function foundBy(answer: Answer): Found | undefined {
  const [kind, first = '', second = ''] = answer.question.split('.');
  if (kind === 'evidence') {
    const question: EvidenceQuestion = EVIDENCE[first as EvidenceId];
    return { answer, place: question.look, isCheck: false, pointsAtFault: false };
  }
  const family = FAMILY_IDS.find((id) => id === first);
  const check: Check | undefined = kind === 'check' && family ? familyById(family).checks[second] : undefined;
  if (!check) return undefined;
  const pointsAtFault = check.answers.some(
    ({ meaning, pointsAtFault: points }) => meaning === answer.said && points,
  );
  return { answer, place: check.look, isCheck: true, pointsAtFault };
}

function sayFound({ answer, place }: Found): Say {
  return [
    placeLine(place),
    ruleOf(answer.said).readBack,
    ...(answer.measurement ? sayMeasurement(answer.measurement) : []),
  ];
}

function sayCounted({ misses, bales }: MissCount): Say {
  return [RECALL_LINES.counted, ...sayOutOf(misses, bales, 'bale')];
}

function sayRepair({ family, cause, outcome }: Repair): Say {
  return [causeLine(family, cause), RECALL_LINES.repairs[outcome]];
}

function sayProofSoFar({ proof }: JobContext): Say {
  return proof && proof.clean > 0
    ? [LINES.proofClean, ...sayWhole(proof.clean), LINES.countOf, ...sayWhole(proof.needed)]
    : [];
}

function isNamed(next: JobContext['next'], family: string, cause: string): boolean {
  return next.kind === 'name' && next.family === family && next.cause === cause;
}
