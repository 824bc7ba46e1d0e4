import type { FamilyId } from '../../flows/families/family.ts';

/**
 * One sure inspection a cause: its probability, its minutes, and whether it takes hands and so the lockout.
 * Every number is an expert estimate of this project. The table is kept apart from the families, whose checks look
 * for several causes in one visit, so that the order of inspections is tested against worked figures.
 */
export interface InspectionRow {
  readonly probability: number;
  readonly hands: boolean;
  readonly minutes: number;
}

export interface InspectionTable {
  readonly rows: readonly InspectionRow[];
  /** Expected minutes of the best order, worked out by an independent script. */
  readonly best: number;
  /** Expected minutes when the likeliest cause is looked at first, worked out by the same script. */
  readonly byProbability: number;
}

/** Minutes of the lockout, paid once. */
export const TABLE_LOCKOUT_MINUTES = 8;

const LOOK = false;
const HANDS = true;

export const INSPECTION_TABLES: Readonly<Record<FamilyId, InspectionTable>> = {
  heldStrandLost: {
    rows: rows([
      [0.24, HANDS, 4],
      [0.14, LOOK, 2],
      [0.2, LOOK, 1.5],
      [0.14, HANDS, 6],
      [0.1, HANDS, 4],
      [0.08, HANDS, 3],
      [0.06, HANDS, 5],
      [0.04, LOOK, 1],
    ]),
    best: 15.04,
    byProbability: 18.98,
  },
  needleStrandMissed: {
    rows: rows([
      [0.24, HANDS, 5],
      [0.18, HANDS, 6],
      [0.13, HANDS, 5],
      [0.15, LOOK, 1.5],
      [0.1, LOOK, 1.5],
      [0.09, LOOK, 1],
      [0.06, HANDS, 3],
      [0.05, HANDS, 4],
    ]),
    best: 16.32,
    byProbability: 21.76,
  },
  noKnotEitherEnd: {
    rows: rows([
      [0.22, HANDS, 4],
      [0.18, LOOK, 2],
      [0.12, LOOK, 1.5],
      [0.1, HANDS, 5],
      [0.12, HANDS, 5],
      [0.1, HANDS, 5],
      [0.1, LOOK, 1],
      [0.06, HANDS, 4],
    ]),
    best: 15.32,
    byProbability: 20.36,
  },
  knotHangsOn: {
    rows: rows([
      [0.24, HANDS, 4],
      [0.24, HANDS, 4],
      [0.18, LOOK, 1],
      [0.12, LOOK, 1.5],
      [0.08, LOOK, 1],
      [0.07, HANDS, 5],
      [0.05, LOOK, 1],
      [0.02, LOOK, 1],
    ]),
    best: 12.15,
    byProbability: 17.08,
  },
  knotFailsLater: {
    rows: rows([
      [0.22, LOOK, 1],
      [0.2, LOOK, 1],
      [0.15, HANDS, 4],
      [0.14, HANDS, 4],
      [0.08, LOOK, 1],
      [0.09, LOOK, 1],
      [0.04, HANDS, 3],
      [0.08, LOOK, 1],
    ]),
    best: 8.06,
    byProbability: 11.19,
  },
  twineFeedLost: {
    rows: rows([
      [0.26, LOOK, 1],
      [0.2, LOOK, 0.5],
      [0.14, LOOK, 1],
      [0.13, HANDS, 2],
      [0.12, HANDS, 3],
      [0.07, LOOK, 1],
      [0.04, LOOK, 0.5],
      [0.04, HANDS, 4],
    ]),
    best: 5.94,
    byProbability: 7.07,
  },
  cyclesWrong: {
    rows: rows([
      [0.24, LOOK, 2],
      [0.2, HANDS, 4],
      [0.18, LOOK, 1],
      [0.13, LOOK, 1.5],
      [0.1, HANDS, 4],
      [0.07, HANDS, 4],
      [0.05, LOOK, 1],
      [0.03, LOOK, 1],
    ]),
    best: 9.76,
    byProbability: 13.96,
  },
  needlesStruck: {
    rows: rows([
      [0.26, HANDS, 5],
      [0.2, HANDS, 8],
      [0.17, LOOK, 1],
      [0.12, LOOK, 1],
      [0.1, HANDS, 5],
      [0.1, HANDS, 4],
      [0.05, HANDS, 6],
    ]),
    best: 16.71,
    byProbability: 21.98,
  },
  bothSidesNowAndThen: {
    rows: rows([
      [0.28, LOOK, 1],
      [0.16, LOOK, 1],
      [0.12, LOOK, 1],
      [0.14, HANDS, 6],
      [0.12, LOOK, 0.5],
      [0.08, LOOK, 1],
      [0.06, HANDS, 6],
      [0.04, HANDS, 10],
    ]),
    best: 7.08,
    byProbability: 11.31,
  },
};

function rows(list: readonly (readonly [probability: number, hands: boolean, minutes: number])[]) {
  return list.map(([probability, hands, minutes]): InspectionRow => ({ probability, hands, minutes }));
}
