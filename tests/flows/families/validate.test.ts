import { existsSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { FAMILIES } from '../../../flows/families/all.ts';
import type { Check, Family } from '../../../flows/families/family.ts';
import { heldStrandLost } from '../../../flows/families/held-strand-lost.ts';
import { familyFaults, familyFile, validFamily } from '../../../flows/families/validate.ts';
import type { PartId } from '../../../flows/knotter.ts';
import type { MeaningId } from '../../../grammar/lexicon.ts';

const good: Family = heldStrandLost;
const FILE = 'flows/families/held-strand-lost.ts';

/** The good family with one check changed. */
function withCheck(id: string, change: (check: Check) => Check): Family {
  const check = good.checks[id];
  if (!check) throw new Error(`The family under test has no check ${id}.`);
  return { ...good, checks: { ...good.checks, [id]: change(check) } };
}

function onlyFault(family: Family): string {
  const faults = familyFaults(family);
  expect(faults).toHaveLength(1);
  return faults[0] ?? '';
}

describe('every charted family', () => {
  test.each(FAMILIES)('$id has no fault and its own file', (family) => {
    expect(familyFaults(family)).toEqual([]);
    expect(existsSync(familyFile(family.id))).toBe(true);
  });
});

describe('a family is refused, with its file and the field, where', () => {
  test('the priors do not sum to one', () => {
    const { holderLoose, ...rest } = good.causes;
    if (!holderLoose) throw new Error('The family under test lost its first cause.');
    const family = { ...good, causes: { ...rest, holderLoose: { ...holderLoose, prior: 0.34 } } };
    expect(onlyFault(family)).toMatch(`${FILE}: causes: the priors sum to 1.1`);
  });

  test('a prior is not a probability', () => {
    const { holderLoose, ...rest } = good.causes;
    if (!holderLoose) throw new Error('The family under test lost its first cause.');
    const family = { ...good, causes: { ...rest, holderLoose: { ...holderLoose, prior: Number.NaN } } };
    expect(familyFaults(family)).toContain(
      `${FILE}: causes.holderLoose.prior: NaN is no probability above zero.`,
    );
  });

  test('something else is listed as a cause', () => {
    const { holderLoose, ...rest } = good.causes;
    if (!holderLoose) throw new Error('The family under test lost its first cause.');
    expect(familyFaults({ ...good, causes: { ...rest, somethingElse: holderLoose } })).toContain(
      `${FILE}: causes.somethingElse: this cause is added to every family and may not be listed.`,
    );
  });

  test('the answers of a check do not sum to one under a cause', () => {
    const family = withCheck('debris', ({ answers: [packed, clean], ...check }) => ({
      ...check,
      answers: [{ ...packed, given: { debrisPacked: 0.9 } }, clean],
    }));
    expect(onlyFault(family)).toMatch(`${FILE}: checks.debris.answers: under debrisPacked they sum to 0.98`);
  });

  test('the answers do not sum to one under the causes not named', () => {
    const family = withCheck('debris', ({ answers: [packed, clean], ...check }) => ({
      ...check,
      answers: [{ ...packed, otherwise: 0.5 }, clean],
    }));
    expect(familyFaults(family)).toContain(
      `${FILE}: checks.debris.answers: under somethingElse they sum to 1.44, not to one.`,
    );
  });

  test('an answer is impossible under a cause, so that one mishearing would rule it out for good', () => {
    const family = withCheck('debris', ({ answers: [packed, clean], ...check }) => ({
      ...check,
      answers: [
        { ...packed, given: { debrisPacked: 1 } },
        { ...clean, given: { debrisPacked: 0 } },
      ],
    }));
    expect(familyFaults(family)).toEqual([
      `${FILE}: checks.debris.answers[0]: 1 for debrisPacked is not between zero and one.`,
      `${FILE}: checks.debris.answers[1]: 0 for debrisPacked is not between zero and one.`,
    ]);
  });

  test('an answer names an unknown cause', () => {
    const family = withCheck('debris', ({ answers: [packed, clean], ...check }) => ({
      ...check,
      answers: [{ ...packed, given: { ...packed.given, gremlins: 0.06 } }, clean],
    }));
    expect(onlyFault(family)).toBe(
      `${FILE}: checks.debris.answers[0].given.gremlins: the family has no such cause.`,
    );
  });

  test('an answer cannot be said', () => {
    const family = withCheck('debris', ({ answers: [packed, clean], ...check }) => ({
      ...check,
      answers: [{ ...packed, meaning: 'finding.unheardOf' as MeaningId }, clean],
    }));
    expect(onlyFault(family)).toBe(
      `${FILE}: checks.debris.answers[0].meaning: nothing that can be said means "finding.unheardOf".`,
    );
  });

  test('an answer takes a word that is understood everywhere', () => {
    const family = withCheck('debris', ({ answers: [packed, clean], ...check }) => ({
      ...check,
      answers: [{ ...packed, meaning: 'yes' }, clean],
    }));
    expect(onlyFault(family)).toBe(
      `${FILE}: checks.debris.answers[0].meaning: "yes" is understood everywhere and answers nothing.`,
    );
  });

  test('two answers have one meaning', () => {
    const family = withCheck('debris', ({ answers: [packed, clean], ...check }) => ({
      ...check,
      answers: [packed, { ...clean, meaning: packed.meaning }],
    }));
    expect(onlyFault(family)).toBe(`${FILE}: checks.debris.answers: two answers have one meaning.`);
  });

  test('no answer points at a fault', () => {
    const family = withCheck('debris', ({ answers: [packed, clean], ...check }) => ({
      ...check,
      answers: [{ ...packed, pointsAtFault: false }, clean],
    }));
    expect(onlyFault(family)).toBe(
      `${FILE}: checks.debris.answers: none points at a fault, so the check can find nothing.`,
    );
  });

  test('a check looks at an unknown part', () => {
    const family = withCheck('debris', (check) => ({ ...check, look: 'wingNut' as PartId }));
    expect(onlyFault(family)).toBe(`${FILE}: checks.debris.look: there is no part called "wingNut".`);
  });

  test.each([
    ['Pull on the strand. Does it slip?', 'pull'],
    ['Push the holder, is it stiff?', 'push'],
    ['Look at the holder. Feel along its edge. Is it sharp?', 'feel'],
  ])('"%s" is asked without the lockout', (ask, word) => {
    const family = withCheck('debris', (check) => ({ ...check, ask }));
    expect(onlyFault(family)).toBe(
      `${FILE}: checks.debris.reach: "${word}" takes hands, so this check needs the lockout.`,
    );
  });

  test('each of its own hands-on checks is called look-only', () => {
    for (const [id, { reach }] of Object.entries(good.checks)) {
      if (reach === 'safeStop') continue;
      const family = withCheck(id, (check) => ({ ...check, reach: 'safeStop' }));
      expect(familyFaults(family)[0]).toMatch(`${FILE}: checks.${id}.reach:`);
    }
  });

  test('the cycle is turned in a plain lockout check', () => {
    const family = withCheck('discStop', (check) => ({ ...check, reach: 'lockout' }));
    expect(onlyFault(family)).toBe(
      `${FILE}: checks.discStop.reach: turning the cycle is a hand turn, not a lockout check.`,
    );
  });

  test('a hand turn turns in its preparation, has none, or does not say how far to turn', () => {
    const fault = (change: (check: Check) => Check) => onlyFault(withCheck('discStop', change));
    expect(fault((check) => ({ ...check, prepare: [check.ask.split('. ')[0] ?? ''] }))).toBe(
      `${FILE}: checks.discStop.prepare: nothing may be turned while the lockout is live.`,
    );
    expect(fault(({ prepare: _, ...check }) => check)).toBe(
      `${FILE}: checks.discStop.prepare: a hand turn is prepared under the lockout first.`,
    );
    expect(fault((check) => ({ ...check, ask: 'Does the mark come right back?' }))).toBe(
      `${FILE}: checks.discStop.ask: a hand turn has to say how far to turn.`,
    );
  });

  test('something is measured while the cycle is turned', () => {
    const family = withCheck('holderPull', (check) => ({ ...check, reach: 'handTurn' }));
    expect(familyFaults(family)).toContain(
      `${FILE}: checks.holderPull.measure: hands stay on the rim in a hand turn, so nothing can be measured.`,
    );
  });

  test('a remedy takes hands without the lockout', () => {
    const { holderLoose, ...rest } = good.causes;
    if (!holderLoose) throw new Error('The family under test lost its first cause.');
    const remedy = { ...holderLoose.remedy, reach: 'safeStop' as const };
    expect(onlyFault({ ...good, causes: { ...rest, holderLoose: { ...holderLoose, remedy } } })).toBe(
      `${FILE}: causes.holderLoose.remedy.reach: "tighten" takes hands, so it needs the lockout.`,
    );
  });

  test('a measuring band has no answer, runs backward or mixes units', () => {
    const change = (bands: NonNullable<Check['measure']>['bands']) =>
      withCheck('holderPull', ({ measure, ...check }) => {
        if (!measure) throw new Error('The check under test lost its measure.');
        return { ...check, measure: { ...measure, bands } };
      });
    expect(onlyFault(change([{ means: 'finding.clean' }]))).toBe(
      `${FILE}: checks.holderPull.measure.bands: "finding.clean" is no answer of this check.`,
    );
    expect(
      onlyFault(
        change([
          { below: { amount: 60, unit: 'poundForce' }, means: 'finding.slipsEasily' },
          { below: { amount: 40, unit: 'poundForce' }, means: 'finding.holdsEven' },
          { means: 'finding.holdsTooTight' },
        ]),
      ),
    ).toBe(`${FILE}: checks.holderPull.measure.bands: they do not run upward inside what is plausible.`);
    expect(
      onlyFault(
        change([
          { below: { amount: 50, unit: 'newton' }, means: 'finding.slipsEasily' },
          { means: 'finding.holdsEven' },
        ]),
      ),
    ).toBe(`${FILE}: checks.holderPull.measure: its ends are not all in one unit.`);
    expect(
      familyFaults(change([{ means: 'finding.slipsEasily' }, { means: 'finding.holdsEven' }])),
    ).toContain(`${FILE}: checks.holderPull.measure.bands: only the last band has no upper end.`);
  });

  test('a sentence has digits or symbols in it', () => {
    const family = withCheck('debris', (check) => ({ ...check, why: 'It takes 1.5 min.' }));
    expect(onlyFault(family)).toBe(
      `${FILE}: checks.debris.why: "It takes 1.5 min." cannot be spoken as it is written.`,
    );
  });

  test('anything at all is wrong when it is loaded', () => {
    const family = withCheck('debris', (check) => ({ ...check, minutes: 0 }));
    expect(() => validFamily(family)).toThrow(`${FILE}: checks.debris.minutes: 0 is not more than zero.`);
    expect(validFamily(good)).toBe(good);
  });
});
