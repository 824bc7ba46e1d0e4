import { isMeaningId, riskOf } from '../../grammar/lexicon.ts';
import { PARTS, type PartId } from '../knotter.ts';
import { type Check, FAMILY_IDS, type Family, type Measure, type Remedy, SOMETHING_ELSE } from './family.ts';
import { handWordIn, turnsByHand } from './hands-on-words.ts';

/** What is wrong with one field of a family's data, in a sentence that names the file and the field. */
export type FamilyFault = string;

/** How far a sum of probabilities may be from one, for the rounding of decimal fractions. */
const ROUNDING = 1e-9;

/**
 * Refuses a family whose data could mislead: it is called on every family when the app, its tests or its build
 * load them.
 * @returns the family itself
 * @throws Error with every fault found, one a line
 */
export function validFamily<CauseId extends string>(family: Family<CauseId>): Family<CauseId> {
  const faults = familyFaults(family);
  if (faults.length > 0) throw new Error(faults.join('\n'));
  return family;
}

/** Every fault of a family's data; none where it can be used. */
export function familyFaults(family: Family): readonly FamilyFault[] {
  const file = familyFile(family.id);
  return [
    ...headFaults(family),
    ...causeFaults(family),
    ...Object.entries(family.checks).flatMap(([id, check]) =>
      checkFaults(check, Object.keys(family.causes)).map((fault) => `checks.${id}.${fault}`),
    ),
  ].map((fault) => `${file}: ${fault}`);
}

/** The file that holds a family: its id in kebab case. */
export function familyFile(id: string): string {
  return `flows/families/${id.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}.ts`;
}

function headFaults({ id, name, symptom, checks }: Family): readonly string[] {
  return [
    ...(FAMILY_IDS.includes(id) ? [] : [`id: there is no family called "${id}".`]),
    ...spokenFaults('name', name),
    ...(isMeaningId(symptom) ? [] : [`symptom: nothing that can be said means "${symptom}".`]),
    ...(Object.keys(checks).length > 0 ? [] : ['checks: there are none, so no cause can be found.']),
  ];
}

function causeFaults({ causes }: Family): readonly string[] {
  const entries = Object.entries(causes);
  const total = entries.reduce((sum, [, { prior }]) => sum + prior, 0);
  return [
    ...(Math.abs(total - 1) <= ROUNDING ? [] : [`causes: the priors sum to ${total}, not to one.`]),
    ...(SOMETHING_ELSE in causes
      ? [`causes.${SOMETHING_ELSE}: this cause is added to every family and may not be listed.`]
      : []),
    ...entries.flatMap(([id, { name, prior, remedy }]) =>
      [
        ...spokenFaults('name', name),
        ...(prior > 0 && prior <= 1 ? [] : [`prior: ${prior} is no probability above zero.`]),
        ...remedyFaults(remedy),
      ].map((fault) => `causes.${id}.${fault}`),
    ),
  ];
}

function remedyFaults({ reach, steps, minutes, refer }: Remedy): readonly string[] {
  const handWord = reach === 'safeStop' ? steps.map(handWordIn).find(Boolean) : undefined;
  return [
    ...steps.flatMap((step, index) => spokenFaults(`remedy.steps[${index}]`, step)),
    ...(minutes > 0 ? [] : [`remedy.minutes: ${minutes} is not more than zero.`]),
    ...(refer === undefined ? [] : spokenFaults('remedy.refer', refer)),
    ...(handWord ? [`remedy.reach: "${handWord}" takes hands, so it needs the lockout.`] : []),
  ];
}

function checkFaults(check: Check, causes: readonly string[]): readonly string[] {
  const { look, prepare = [], ask, why, minutes, measure } = check;
  return [
    ...(look in PARTS ? [] : [`look: there is no part called "${look}".`]),
    ...[...prepare.entries()].flatMap(([index, text]) => spokenFaults(`prepare[${index}]`, text)),
    ...spokenFaults('ask', ask),
    ...spokenFaults('why', why),
    ...(minutes > 0 ? [] : [`minutes: ${minutes} is not more than zero.`]),
    ...reachFaults(check),
    ...answerFaults(check, causes),
    ...(measure ? measureFaults(measure, check) : []),
  ];
}

/** Lies on the ground or with the operator, so hands on it touch no machine. */
const OFF_THE_MACHINE: readonly PartId[] = ['failedString', 'bale', 'windrow', 'tractorSeat'];

function reachFaults({ reach, look, prepare = [], ask, measure }: Check): readonly string[] {
  const spoken = [...prepare, ask];
  switch (reach) {
    case 'lockout':
      return spoken.some(turnsByHand)
        ? ['reach: turning the cycle is a hand turn, not a lockout check.']
        : [];
    case 'handTurn':
      return [
        ...(measure ? ['measure: hands stay on the rim in a hand turn, so nothing can be measured.'] : []),
        ...(prepare.length === 0 ? ['prepare: a hand turn is prepared under the lockout first.'] : []),
        ...(prepare.some(turnsByHand) ? ['prepare: nothing may be turned while the lockout is live.'] : []),
        ...(turnsByHand(ask) ? [] : ['ask: a hand turn has to say how far to turn.']),
      ];
    case 'safeStop': {
      if (OFF_THE_MACHINE.includes(look)) return [];
      const handWord = spoken.map(handWordIn).find(Boolean);
      return [
        ...(handWord ? [`reach: "${handWord}" takes hands, so this check needs the lockout.`] : []),
        ...(measure ? ['reach: a measurement on the machine takes hands, so it needs the lockout.'] : []),
      ];
    }
  }
}

function answerFaults({ answers }: Check, causes: readonly string[]): readonly string[] {
  const meanings = answers.map(({ meaning }) => meaning);
  const sums = [...causes, SOMETHING_ELSE].map((cause) => ({
    cause,
    sum: answers.reduce((sum, { given, otherwise }) => sum + (given[cause] ?? otherwise), 0),
  }));
  return [
    ...(answers.length >= 2 ? [] : ['answers: a check takes at least two answers.']),
    ...(new Set(meanings).size === meanings.length ? [] : ['answers: two answers have one meaning.']),
    ...(answers.some(({ pointsAtFault }) => pointsAtFault)
      ? []
      : ['answers: none points at a fault, so the check can find nothing.']),
    ...answers.flatMap(({ meaning, given, otherwise }, index) => [
      ...(isMeaningId(meaning)
        ? riskOf(meaning) === 'answer'
          ? []
          : [`answers[${index}].meaning: "${meaning}" is understood everywhere and answers nothing.`]
        : [`answers[${index}].meaning: nothing that can be said means "${meaning}".`]),
      ...Object.keys(given)
        .filter((cause) => !causes.includes(cause))
        .map((cause) => `answers[${index}].given.${cause}: the family has no such cause.`),
      ...Object.entries({ ...given, otherwise })
        .filter(([, p]) => !(p !== undefined && p > 0 && p < 1))
        .map(([cause, p]) => `answers[${index}]: ${p} for ${cause} is not between zero and one.`),
    ]),
    ...sums
      .filter(({ sum }) => Math.abs(sum - 1) > ROUNDING)
      .map(({ cause, sum }) => `answers: under ${cause} they sum to ${sum}, not to one.`),
  ];
}

function measureFaults({ plausible, bands, typically }: Measure, { answers }: Check): readonly string[] {
  const edges = bands.map(({ below }) => below);
  const closed = edges.slice(0, -1);
  const amounts = [plausible.low, ...closed, plausible.high].map((edge) => edge?.amount ?? Number.NaN);
  const units = new Set([plausible.low, plausible.high, ...closed].map((edge) => edge?.unit));
  return [
    ...(edges.at(-1) === undefined && closed.every(Boolean)
      ? []
      : ['measure.bands: only the last band has no upper end.']),
    ...(units.size === 1 ? [] : ['measure: its ends are not all in one unit.']),
    ...(amounts.every((amount, index) => index === 0 || amount > (amounts[index - 1] ?? Number.NaN))
      ? []
      : ['measure.bands: they do not run upward inside what is plausible.']),
    ...bands
      .filter(({ means }) => !answers.some(({ meaning }) => meaning === means))
      .map(({ means }) => `measure.bands: "${means}" is no answer of this check.`),
    ...spokenFaults('measure.typically', typically),
  ];
}

/** Letters and the marks a voice pauses at; a digit or a symbol would be read in a way nobody has checked. */
const SPEAKABLE = /^[A-Za-z][A-Za-z ,.?'-]*$/;

function spokenFaults(field: string, text: string): readonly string[] {
  return SPEAKABLE.test(text) ? [] : [`${field}: "${text}" cannot be spoken as it is written.`];
}
