import { familyById } from '../../flows/families/all.ts';
import type { JobContext, Proof, Repair } from '../../flows/job-context.ts';
import { estimatesOf } from '../../flows/job-setup.ts';
import { type JobSnapshot, safetyOf } from '../../flows/prompt.ts';
import { sayHandOverReason } from '../../flows/sayings.ts';
import { CAUTIONS } from '../cautions.ts';
import { aboutOf, statusOf, symptomOf } from '../records/job-header.ts';
import type { LogEntry } from '../records/log-entry.ts';
import type { MachineProfile } from '../records/machine.ts';
import { type RetracedStep, replay, retrace } from '../records/replay.ts';
import { AS_LEFT, NOT_TO_DO } from './advice.ts';
import type { JobCard, RepairLine, WhichSide } from './card.ts';
import { countOf } from './count-lines.ts';
import { figureLines } from './figure-lines.ts';
import { askedText, datedAnswers, findingOf, tellsNothing } from './findings.ts';
import { lockoutLines } from './lockout-lines.ts';
import { partLines } from './part-lines.ts';
import { proofLine } from './proof-line.ts';
import { beliefPath, causeText, weighed } from './suspects.ts';

export interface CardSource {
  /** The whole log, in order, at least its first entry. */
  readonly entries: readonly LogEntry[];
  /** The machine the job is about, as it is known now. */
  readonly machine?: MachineProfile;
}

/**
 * Works the card out from the log alone, so that it says what was said.
 * @throws Error where the log has no entry
 */
export function makeCard({ entries, machine }: CardSource): JobCard {
  const [first] = entries;
  const last = entries.at(-1);
  if (!first || !last) throw new Error('A log without an entry has nothing to report.');
  const steps = [...retrace(entries)];
  const { snapshot, departsAtSeq } = replay(entries);
  const { context } = snapshot;
  const { person } = aboutOf(entries);
  const symptom = symptomOf(entries);
  const count = countOf(entries);
  return {
    jobId: first.jobId,
    startedAtMs: first.atMs,
    lastAtMs: last.atMs,
    status: statusOf(snapshot),
    ...(person ? { person } : {}),
    ...(machine ? { machine } : {}),
    ...sideOf(context),
    ...(symptom ? { symptom } : {}),
    findings: datedAnswers(steps).flatMap((dated) => findingOf(dated, context.ownBands) ?? []),
    repairs: repairLines(steps, context.repairs),
    parts: partLines(snapshot, sideOf(context).side),
    lockout: lockoutLines(steps),
    ...weighed(context.answers, estimatesOf(context)),
    beliefs: beliefPath(context.answers, estimatesOf(context)),
    figures: figureLines(entries),
    ...(count ? { count } : {}),
    photos: entries.flatMap(({ atMs, event }) => {
      if (event.type !== 'record.photo') return [];
      const { photoId, of, side } = event;
      return [{ atMs, photoId, of, ...(side ? { side } : {}) }];
    }),
    notes: entries.flatMap(({ atMs, event }) =>
      event.type === 'record.note' ? [{ atMs, text: event.text }] : [],
    ),
    unresolved: unresolved(snapshot, departsAtSeq),
    machineAsLeft: AS_LEFT[safetyOf(snapshot)],
    notToDo: NOT_TO_DO,
    cautions: CAUTIONS,
  };
}

/** The side, which the context only knows where it is one of the two. */
function sideOf({ side, answers }: JobContext): { readonly side?: WhichSide } {
  if (side) return { side };
  const said = answers.findLast(({ question }) => question === 'evidence.whichKnotter')?.said;
  if (said === 'which.both') return { side: 'both' };
  return said === 'which.alternates' ? { side: 'nowOneNowTheOther' } : {};
}

function repairLines(steps: readonly RetracedStep[], repairs: readonly Repair[]): readonly RepairLine[] {
  const proofs = proofsByRepair(steps);
  return repairs.map(({ family, cause, outcome }, index) => {
    const proof = proofs.get(index);
    return {
      cause: causeText({ family, cause }),
      steps: familyById(family).causes[cause]?.remedy.steps ?? [],
      outcome,
      ...(proof ? { proof: proofLine(proof, outcome) } : {}),
    };
  });
}

/** The proof counted for each repair, by its place among them: the context keeps only the last. */
function proofsByRepair(steps: readonly RetracedStep[]): ReadonlyMap<number, Proof> {
  const proofs = new Map<number, Proof>();
  for (const { before, after } of steps) {
    const { proof, repairs } = after.context;
    if (proof && proof !== before.context.proof) proofs.set(repairs.length - 1, proof);
  }
  return proofs;
}

function unresolved(snapshot: JobSnapshot, departsAtSeq?: number): readonly string[] {
  const { context } = snapshot;
  const unproved = context.repairs.at(-1)?.outcome === 'done';
  return [
    ...(statusOf(snapshot) === 'open' ? ['The job is still open.'] : []),
    ...sayHandOverReason(context),
    ...(unproved ? ['The last repair is not proved: the counting of ties did not finish.'] : []),
    ...context.answers
      .filter(tellsNothing)
      .flatMap(({ question }) => askedText(question) ?? [])
      .map((asked) => `Not answered. ${asked}`),
    ...(departsAtSeq === undefined
      ? []
      : [
          `This log was written by another version of the app. From its line ${departsAtSeq} on, what is worked out here may differ from what was said then.`,
        ]),
  ];
}
