import { familyById } from '../families/all.ts';
import { FAMILY_IDS, type FamilyId, SOMETHING_ELSE } from '../families/family.ts';
import type { Answer } from './answer.ts';
import type { Hypothesis } from './beliefs.ts';
import { sharesAfter } from './dirichlet.ts';
import {
  byEvidence,
  byFamily,
  type Estimates,
  EVIDENCE_IDS,
  evidenceAnswerIndex,
  evidenceAnswers,
  SEED_ESTIMATES,
} from './estimates.ts';
import type { EvidenceId } from './evidence.ts';

/** A closed job that teaches: what was answered, and the cause whose repair was proved. */
export interface LoggedJob {
  readonly answers: readonly Answer[];
  readonly found: Hypothesis;
}

/** What this tablet has seen: plain counts, so that they can be added up, shown and taken back. */
export interface Counts {
  readonly jobs: number;
  readonly families: Readonly<Record<FamilyId, number>>;
  readonly causes: Readonly<Record<FamilyId, Readonly<Record<string, number>>>>;
  /** One entry an answer, in the order of EVIDENCE. */
  readonly evidence: Readonly<Record<EvidenceId, readonly Readonly<Record<FamilyId, number>>[]>>;
}

/** One estimate beside what the tablet has learnt, for a page that shows both. */
export interface Comparison {
  readonly family: FamilyId;
  /** Missing in the rows that compare the families themselves. */
  readonly cause?: string;
  readonly seed: number;
  readonly learnt: number;
  readonly jobs: number;
}

/** How many jobs the seed estimates are worth. Expert estimates. */
const FAMILY_STRENGTH = 40;
const CAUSE_STRENGTH = 20;
const EVIDENCE_STRENGTH = 20;

/** Before the first job, and after a reset. */
export const NOTHING_LEARNT: Counts = {
  jobs: 0,
  families: byFamily(() => 0),
  causes: byFamily((family) =>
    Object.fromEntries(Object.keys(familyById(family).causes).map((cause) => [cause, 0])),
  ),
  evidence: byEvidence((id) => evidenceAnswers(id).map(() => byFamily(() => 0))),
};

/** The counts of some jobs; the order of the jobs does not matter. */
export function countsOf(jobs: readonly LoggedJob[]): Counts {
  return jobs.reduce(counted, NOTHING_LEARNT);
}

/**
 * The counts with one more job. A cause that is on no list counts for its family only.
 * @throws RangeError where the family has no such cause
 */
export function counted(counts: Counts, { answers, found: { family, cause } }: LoggedJob): Counts {
  const ofFamily = counts.causes[family];
  if (cause !== SOMETHING_ELSE && !(cause in ofFamily)) {
    throw new RangeError(`The family ${family} has no cause ${cause}.`);
  }
  return {
    jobs: counts.jobs + 1,
    families: { ...counts.families, [family]: counts.families[family] + 1 },
    causes: {
      ...counts.causes,
      [family]: Object.fromEntries(
        Object.entries(ofFamily).map(([id, count]) => [id, id === cause ? count + 1 : count]),
      ),
    },
    evidence: byEvidence((id) => {
      const said = answers.findLast(({ question }) => question === `evidence.${id}`)?.said;
      const given = said === undefined ? -1 : evidenceAnswerIndex(id, said);
      return counts.evidence[id].map((row, index) =>
        index === given ? { ...row, [family]: row[family] + 1 } : row,
      );
    }),
  };
}

/** The seed estimates moved by what was counted. Nothing uses them unless they are handed on. */
export function estimatesFrom(counts: Counts): Estimates {
  const families = sharesAfter(
    FAMILY_IDS.map((id) => SEED_ESTIMATES.families[id]),
    FAMILY_STRENGTH,
    FAMILY_IDS.map((id) => counts.families[id]),
  );
  return {
    families: byFamily((family) => families[FAMILY_IDS.indexOf(family)] ?? 0),
    causes: byFamily((family) => {
      const causes = Object.keys(SEED_ESTIMATES.causes[family]);
      const shares = sharesAfter(
        causes.map((cause) => SEED_ESTIMATES.causes[family][cause] ?? 0),
        CAUSE_STRENGTH,
        causes.map((cause) => counts.causes[family][cause] ?? 0),
      );
      return Object.fromEntries(causes.map((cause, index) => [cause, shares[index] ?? 0]));
    }),
    evidence: byEvidence((id) => {
      const learnt = byFamily((family) =>
        sharesAfter(
          SEED_ESTIMATES.evidence[id].map((given) => given[family]),
          EVIDENCE_STRENGTH,
          counts.evidence[id].map((row) => row[family]),
        ),
      );
      return evidenceAnswers(id).map((_, index) => byFamily((family) => learnt[family][index] ?? 0));
    }),
  };
}

/** Seed and learnt values side by side: the families first, then the causes of each. */
export function compared(counts: Counts): readonly Comparison[] {
  const learnt = estimatesFrom(counts);
  return [
    ...FAMILY_IDS.map((family) => ({
      family,
      seed: SEED_ESTIMATES.families[family],
      learnt: learnt.families[family],
      jobs: counts.families[family],
    })),
    ...FAMILY_IDS.flatMap((family) =>
      Object.entries(SEED_ESTIMATES.causes[family]).map(([cause, seed]) => ({
        family,
        cause,
        seed,
        learnt: learnt.causes[family][cause] ?? 0,
        jobs: counts.causes[family][cause] ?? 0,
      })),
    ),
  ];
}

/** Names the format, so that another file is not taken for one of these. */
const FORMAT = 'knotwright learnt counts';
const VERSION = 1;

/** The counts as a file for another tablet. */
export function exportedCounts(counts: Counts): string {
  return JSON.stringify({ format: FORMAT, version: VERSION, ...counts }, null, 2);
}

export type ReadCounts =
  | { readonly ok: true; readonly counts: Counts }
  | { readonly ok: false; readonly reason: string };

/** Reads what {@link exportedCounts} wrote, or says what is wrong with it; nothing is taken from a faulty file. */
export function readCounts(text: string): ReadCounts {
  let file: unknown;
  try {
    file = JSON.parse(text);
  } catch {
    return refused('This file is not JSON.');
  }
  if (field(file, 'format') !== FORMAT) return refused('This file holds no learnt counts.');
  if (field(file, 'version') !== VERSION) {
    return refused(
      `This file is of version ${String(field(file, 'version'))}, and this app reads ${VERSION}.`,
    );
  }
  const faults = [
    ...countFaults(file, ['jobs']),
    ...FAMILY_IDS.flatMap((family) => [
      ...countFaults(file, ['families', family]),
      ...Object.keys(NOTHING_LEARNT.causes[family]).flatMap((cause) =>
        countFaults(file, ['causes', family, cause]),
      ),
      ...EVIDENCE_IDS.flatMap((id) =>
        NOTHING_LEARNT.evidence[id].flatMap((_, index) =>
          countFaults(file, ['evidence', id, String(index), family]),
        ),
      ),
    ]),
  ];
  if (faults[0] !== undefined) return refused(faults[0]);
  const at = (path: readonly string[]) => Number(fieldAt(file, path));
  return {
    ok: true,
    counts: {
      jobs: at(['jobs']),
      families: byFamily((family) => at(['families', family])),
      causes: byFamily((family) =>
        Object.fromEntries(
          Object.keys(NOTHING_LEARNT.causes[family]).map((cause) => [cause, at(['causes', family, cause])]),
        ),
      ),
      evidence: byEvidence((id) =>
        NOTHING_LEARNT.evidence[id].map((_, index) =>
          byFamily((family) => at(['evidence', id, String(index), family])),
        ),
      ),
    },
  };
}

function countFaults(file: unknown, path: readonly string[]): readonly string[] {
  const value = fieldAt(file, path);
  return typeof value === 'number' && Number.isSafeInteger(value) && value >= 0
    ? []
    : [`The count ${path.join('.')} is ${JSON.stringify(value)}, not a whole number from zero up.`];
}

function fieldAt(value: unknown, path: readonly string[]): unknown {
  return path.reduce(field, value);
}

function field(value: unknown, name: string): unknown {
  return typeof value === 'object' && value !== null && Object.hasOwn(value, name)
    ? (value as Record<string, unknown>)[name]
    : undefined;
}

function refused(reason: string): ReadCounts {
  return { ok: false, reason: `${reason} Nothing was taken from it, and the estimates stay as they are.` };
}
