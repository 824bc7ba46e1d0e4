import { type MeaningId, ruleOf } from '../grammar/lexicon.ts';
import type { Measurement } from '../grammar/measurements.ts';
import type { QuestionId } from './diagnosis/answer.ts';
import { isBelow } from './diagnosis/measured.ts';
import { familyById } from './families/all.ts';
import { FAMILY_IDS, type FamilyId, type Measure } from './families/family.ts';

/** A measured check, by its family. */
interface MeasuredCheck {
  readonly family: FamilyId;
  readonly check: string;
}

/**
 * What is measured on a knotter, each once, with every check that measures it: whoever enters the value of their own
 * machine enters it for all of them.
 */
export const MACHINE_VALUES = {
  holderPull: {
    name: 'Pull at which the twine holder lets the strand go',
    checks: [
      { family: 'bothSidesNowAndThen', check: 'bothHolders' },
      { family: 'heldStrandLost', check: 'holderPull' },
      { family: 'noKnotEitherEnd', check: 'holderPull' },
    ],
  },
  tonguePull: {
    name: 'Pull that lifts the billhook tongue',
    checks: [
      { family: 'knotHangsOn', check: 'tonguePull' },
      { family: 'knotFailsLater', check: 'tonguePull' },
      { family: 'noKnotEitherEnd', check: 'tonguePull' },
    ],
  },
  wiperGap: {
    name: 'Gap between wiper and billhook',
    checks: [{ family: 'knotHangsOn', check: 'wiperGap' }],
  },
  tails: { name: 'Length of the knot tails', checks: [{ family: 'knotFailsLater', check: 'tails' }] },
  stringSlack: {
    name: 'Slack of the string on a bale',
    checks: [{ family: 'knotHangsOn', check: 'baleSlack' }],
  },
  boxDrag: {
    name: 'Pull of the twine from the box',
    checks: [{ family: 'twineFeedLost', check: 'boxDrag' }],
  },
  needleShake: {
    name: 'Side play of the needle',
    checks: [{ family: 'needleStrandMissed', check: 'needleShake' }],
  },
  frameLift: {
    name: 'Lift of the knotter frame',
    checks: [{ family: 'needleStrandMissed', check: 'frameLift' }],
  },
  shaftPlay: {
    name: 'End play of the knotter shaft',
    checks: [{ family: 'bothSidesNowAndThen', check: 'shaftPlay' }],
  },
} as const satisfies Readonly<
  Record<string, { readonly name: string; readonly checks: readonly [MeasuredCheck, ...MeasuredCheck[]] }>
>;

export type MachineValueId = keyof typeof MACHINE_VALUES;

export const MACHINE_VALUE_IDS = Object.keys(MACHINE_VALUES) as readonly MachineValueId[];

/** What the manual of somebody's own machine says, or its plate, or who set it. It wins over every typical band. */
export interface MachineBand {
  readonly of: MachineValueId;
  /** From the lowest up: where one finding ends and the next begins, one fewer than there are findings. */
  readonly limits: readonly Measurement[];
  /** Where it came from, in their words. */
  readonly source: string;
}

/** The findings a value can come to, from the lowest up; a machine's own limits stand between them. */
export function findingsOf(id: MachineValueId): readonly MeaningId[] {
  return measureOf(id).bands.map(({ means }) => means);
}

/** The typical band, with its dimension and its span. */
export function measureOf(id: MachineValueId): Measure {
  const [{ family, check }] = MACHINE_VALUES[id].checks;
  const measure = familyById(family).checks[check]?.measure;
  if (!measure) throw new Error(`${family} ${check} measures nothing.`);
  return measure;
}

/** The machine's own band for a check, where it has one. */
export function machineBandFor(
  { family, check }: MeasuredCheck,
  bands: readonly MachineBand[],
): MachineBand | undefined {
  const wanted = machineValueOf({ family, check });
  return bands.findLast(({ of }) => of === wanted);
}

/** What a check measures, by the name it goes by on a machine; undefined where it measures nothing. */
export function machineValueOf({ family, check }: MeasuredCheck): MachineValueId | undefined {
  return MACHINE_VALUE_IDS.find((id) =>
    (MACHINE_VALUES[id].checks as readonly MeasuredCheck[]).some(
      (each) => each.family === family && each.check === check,
    ),
  );
}

/** What a check is judged by: the machine's own limits where it has some, else the typical ones. */
export function judgedBy(measure: Measure, own: MachineBand | undefined): Measure {
  if (!own) return measure;
  const bands = measure.bands.map(({ means }, at) => {
    const below = own.limits[at];
    return below ? { means, below } : { means };
  });
  return { ...measure, bands };
}

/** What keeps limits from being used, as one sentence each; empty where nothing does. */
export function troubleWith({ of, limits }: Pick<MachineBand, 'of' | 'limits'>): readonly string[] {
  const { bands, plausible } = measureOf(of);
  if (limits.length !== bands.length - 1) return [`Give ${bands.length - 1} numbers.`];
  const isOutside = limits.some((limit) => isBelow(limit, plausible.low) || isBelow(plausible.high, limit));
  const isDownward = limits.some((limit, at) => {
    const lower = limits[at - 1];
    return lower !== undefined && !isBelow(lower, limit);
  });
  return [
    ...(isOutside
      ? [`It has to be between ${plausible.low.amount} and ${plausible.high.amount} ${plausible.high.unit}.`]
      : []),
    ...(isDownward ? ['The second number has to be the higher one.'] : []),
  ];
}

/** The read-backs of the findings, for the labels of an editor: "Slips easily." */
export function findingLabels(id: MachineValueId): readonly string[] {
  return findingsOf(id).map((meaning) => ruleOf(meaning).readBack);
}

/** What an answer to a measured check is held against: the typical words, and the machine's own band where it has one. */
export function checkMeasureOf(
  question: QuestionId,
  ownBands: readonly MachineBand[],
): { readonly typically: string; readonly own?: MachineBand } | undefined {
  const [kind, first, check = ''] = question.split('.');
  const family = FAMILY_IDS.find((id) => id === first);
  const measure = kind === 'check' && family ? familyById(family).checks[check]?.measure : undefined;
  if (!measure || !family) return undefined;
  const own = machineBandFor({ family, check }, ownBands);
  return { typically: measure.typically, ...(own ? { own } : {}) };
}
