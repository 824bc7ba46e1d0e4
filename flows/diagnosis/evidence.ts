import type { MeaningId } from '../../grammar/lexicon.ts';
import type { FamilyId } from '../families/family.ts';
import type { PartId } from '../knotter.ts';

/**
 * Questions that tell the families apart before anybody touches the machine. Every number here is an expert
 * estimate; a job log replaces them.
 */
export interface EvidenceQuestion {
  readonly look: PartId;
  readonly ask: string;
  readonly why: string;
  /** Seconds to ask and answer; expert estimate. Information is bought by the second. */
  readonly seconds: number;
  readonly answers: readonly EvidenceAnswer[];
}

export interface EvidenceAnswer {
  /** More than one where the person may tell more than the question needs, such as the side. */
  readonly meanings: readonly MeaningId[];
  /** P(answer | family). */
  readonly given: Readonly<Record<FamilyId, number>>;
}

export type EvidenceId = keyof typeof EVIDENCE;

/** Share of jobs by family, before anything is known. Expert estimate. */
export const FAMILY_PRIORS: Readonly<Record<FamilyId, number>> = {
  heldStrandLost: 0.2,
  needleStrandMissed: 0.17,
  noKnotEitherEnd: 0.13,
  knotHangsOn: 0.14,
  knotFailsLater: 0.12,
  twineFeedLost: 0.11,
  cyclesWrong: 0.07,
  needlesStruck: 0.03,
  bothSidesNowAndThen: 0.03,
};

/** P(someone names the family's own symptom | family), the rest spread over the others. Expert estimate. */
export const SYMPTOM_NAMED_RIGHTLY = 0.7;

export const EVIDENCE = {
  knotPlace: {
    look: 'failedString',
    ask: 'Take the first string that failed, not the one right after threading. One end lay along the top, the other came up the front. Where is the knot?',
    why: 'Where the knot sits says which strand was lost. The tie after threading misleads, and so does a miss with an old loop still on the billhook.',
    seconds: 10,
    answers: [
      { meanings: ['knot.frontEnd'], given: byFamily(0.74, 0.05, 0.05, 0.03, 0.02, 0.01, 0.01, 0.03, 0.2) },
      { meanings: ['knot.topEnd'], given: byFamily(0.05, 0.71, 0.05, 0.03, 0.02, 0.15, 0.01, 0.35, 0.2) },
      { meanings: ['knot.neither'], given: byFamily(0.1, 0.15, 0.78, 0.04, 0.03, 0.03, 0.02, 0.1, 0.2) },
      { meanings: ['knot.onBillhook'], given: byFamily(0.04, 0.03, 0.05, 0.73, 0.05, 0.01, 0.01, 0.02, 0.1) },
      { meanings: ['knot.made'], given: byFamily(0.05, 0.03, 0.05, 0.15, 0.85, 0.05, 0.01, 0.05, 0.25) },
      { meanings: ['knot.oneStrand'], given: byFamily(0.01, 0.02, 0.01, 0.01, 0.02, 0.74, 0.01, 0.1, 0.03) },
      { meanings: ['knot.noCycle'], given: byFamily(0.01, 0.01, 0.01, 0.01, 0.01, 0.01, 0.93, 0.35, 0.02) },
    ],
  },
  nextBale: {
    look: 'bale',
    ask: 'After a miss, what does the next bale do?',
    why: 'Whether it threads itself again says if the disc still had a strand.',
    seconds: 4,
    answers: [
      { meanings: ['next.tiesItself'], given: byFamily(0.85, 0.25, 0.75, 0.3, 0.97, 0.05, 0.3, 0.1, 0.7) },
      { meanings: ['next.needsHelp'], given: byFamily(0.1, 0.65, 0.2, 0.6, 0.02, 0.9, 0.05, 0.3, 0.25) },
      { meanings: ['next.never'], given: byFamily(0.05, 0.1, 0.05, 0.1, 0.01, 0.05, 0.65, 0.6, 0.05) },
    ],
  },
  endLook: {
    look: 'failedString',
    ask: 'Look at the bare end of the string. How does it look?',
    why: 'A square cut came from the knife. A pinched or torn end did not.',
    seconds: 8,
    answers: [
      { meanings: ['end.square'], given: byFamily(0.6, 0.7, 0.35, 0.1, 0.2, 0.1, 0.7, 0.25, 0.35) },
      { meanings: ['end.pinched'], given: byFamily(0.3, 0.05, 0.05, 0.05, 0.15, 0.1, 0.1, 0.15, 0.15) },
      { meanings: ['end.torn'], given: byFamily(0.05, 0.1, 0.1, 0.75, 0.5, 0.75, 0.1, 0.5, 0.3) },
      { meanings: ['end.curled'], given: byFamily(0.05, 0.15, 0.5, 0.1, 0.15, 0.05, 0.1, 0.1, 0.2) },
    ],
  },
  whichKnotter: {
    look: 'knotterFrame',
    ask: 'Stand behind the baler and face the tractor. Which knotter is it?',
    why: 'A fault in one knotter shows on one side. A fault before them shows on both.',
    seconds: 4,
    answers: [
      {
        meanings: ['which.left', 'which.right'],
        given: byFamily(0.85, 0.8, 0.85, 0.85, 0.45, 0.93, 0.02, 0.35, 0.05),
      },
      { meanings: ['which.both'], given: byFamily(0.07, 0.12, 0.07, 0.07, 0.45, 0.02, 0.96, 0.55, 0.55) },
      { meanings: ['which.alternates'], given: byFamily(0.08, 0.08, 0.08, 0.08, 0.1, 0.05, 0.02, 0.1, 0.4) },
    ],
  },
  whenItMisses: {
    look: 'windrow',
    ask: 'When does it miss?',
    why: 'Misses after a ball change or in heavy hay point away from the knotter itself.',
    seconds: 5,
    answers: [
      { meanings: ['when.mostBales'], given: byFamily(0.4, 0.35, 0.45, 0.45, 0.25, 0.15, 0.5, 0.5, 0.05) },
      { meanings: ['when.random'], given: byFamily(0.3, 0.4, 0.35, 0.35, 0.3, 0.2, 0.4, 0.25, 0.55) },
      { meanings: ['when.ballChange'], given: byFamily(0.02, 0.03, 0.02, 0.02, 0.1, 0.5, 0.01, 0.01, 0.05) },
      { meanings: ['when.firstBales'], given: byFamily(0.03, 0.07, 0.08, 0.1, 0.05, 0.1, 0.04, 0.09, 0.1) },
      { meanings: ['when.heavyCrop'], given: byFamily(0.25, 0.15, 0.1, 0.08, 0.3, 0.05, 0.05, 0.15, 0.25) },
    ],
  },
  needleSigns: {
    look: 'needle',
    ask: 'Since it last ran well, was there a bang, a broken shear bolt, or a needle that looks bent?',
    why: 'Needles out of step with the plunger are dangerous, so I ask before anybody goes near.',
    seconds: 5,
    answers: [
      {
        meanings: ['needles.quiet'],
        given: byFamily(0.97, 0.97, 0.97, 0.97, 0.97, 0.94, 0.9, 0.1, 0.96),
      },
      {
        meanings: ['needles.trouble'],
        given: byFamily(0.03, 0.03, 0.03, 0.03, 0.03, 0.06, 0.1, 0.9, 0.04),
      },
    ],
  },
} as const satisfies Readonly<Record<string, EvidenceQuestion>>;

/** One row of the table, in the order of FAMILY_IDS. */
function byFamily(
  heldStrandLost: number,
  needleStrandMissed: number,
  noKnotEitherEnd: number,
  knotHangsOn: number,
  knotFailsLater: number,
  twineFeedLost: number,
  cyclesWrong: number,
  needlesStruck: number,
  bothSidesNowAndThen: number,
): Readonly<Record<FamilyId, number>> {
  return {
    heldStrandLost,
    needleStrandMissed,
    noKnotEitherEnd,
    knotHangsOn,
    knotFailsLater,
    twineFeedLost,
    cyclesWrong,
    needlesStruck,
    bothSidesNowAndThen,
  };
}
