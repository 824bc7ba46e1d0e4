import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MACHINE_VALUE_IDS, type MachineBand, measureOf } from '../../../flows/machine-values.ts';
import {
  bandOf,
  figureDraftsOf,
  figureValueOf,
  limitDraftsOf,
  machineNumbers,
  manualValuesOf,
} from '../../../src/screens/machine-drafts.ts';

const NO_LIMITS = limitDraftsOf([]);
const NO_FIGURES = figureDraftsOf({});

describe('numbers of a machine as they are typed', () => {
  it('are nothing while nothing is typed', () => {
    expect(machineNumbers(NO_LIMITS, NO_FIGURES)).toEqual({
      kind: 'value',
      value: { bands: [], figures: {} },
    });
  });

  it('come back as they were kept', () => {
    fc.assert(
      fc.property(fc.constantFrom(...MACHINE_VALUE_IDS), fc.integer({ min: 1, max: 98 }), (of, share) => {
        const { plausible, bands } = measureOf(of);
        const { low, high } = plausible;
        const own: MachineBand = {
          of,
          limits: bands.slice(1).map((_, at) => ({
            amount: low.amount + ((share + at) / 100) * (high.amount - low.amount),
            unit: high.unit,
          })),
          source: 'plate on the frame',
        };
        const kept = machineNumbers(limitDraftsOf([own]), figureDraftsOf({ baleLength: 36.5 }));
        expect(kept).toEqual({ kind: 'value', value: { bands: [own], figures: { baleLength: 36.5 } } });
      }),
    );
  });

  it.each([
    [['40', ''], 'manual', /every field of it takes a number/],
    [['forty', '60'], 'manual', /every field of it takes a number/],
    [['-40', '60'], 'manual', /every field of it takes a number/],
    [['60', '40'], 'manual', /second number has to be the higher/],
    [['40', '6000'], 'manual', /between 1 and 200/],
    [['40', '60'], ' ', /say where it comes from/],
  ])('%j from "%s" is refused with its reason', (amounts, source, reason) => {
    const drafted = bandOf('holderPull', { amounts, unit: 'poundForce', source });
    expect(drafted.kind === 'trouble' && drafted.sentence).toMatch(reason);
    const all = machineNumbers(
      { ...NO_LIMITS, holderPull: { amounts, unit: 'poundForce', source } },
      NO_FIGURES,
    );
    expect(all).toEqual(drafted);
  });

  it('take a comma for a point', () => {
    expect(figureValueOf('baleLength', '36,5')).toEqual({ kind: 'value', value: 36.5 });
  });

  it('a bale of 400 inches cannot be, and the sentence says what can', () => {
    expect(figureValueOf('baleLength', '400')).toEqual({
      kind: 'trouble',
      sentence: 'Bale length: 400 cannot be. It has to be 12 to 60.',
    });
  });
});

describe('other values of a manual as they are typed', () => {
  const whole = { name: 'Needle to holder', amount: '1,5', unit: 'mm', source: 'page 42' };

  it('are kept with their unit and where they come from; a blank one is left out', () => {
    const blank = { name: ' ', amount: '', unit: '', source: '' };
    expect(manualValuesOf([blank, whole, blank])).toEqual({
      kind: 'value',
      value: [{ name: 'Needle to holder', amount: 1.5, unit: 'mm', source: 'page 42' }],
    });
  });

  it.each([
    ['name', '', 'A value of its manual needs a name.'],
    ['amount', '', /Needle to holder: its value has to be a number/],
    ['amount', '-2', /Needle to holder: its value has to be a number/],
    ['amount', 'half past six', /Needle to holder: its value has to be a number/],
    ['unit', ' ', /Needle to holder: say in what unit/],
    ['source', '', /Needle to holder: say where it comes from/],
  ])('one whose %s is "%s" is refused with its reason', (field, typed, reason) => {
    const drafted = manualValuesOf([whole, { ...whole, [field]: typed }]);
    expect(drafted.kind === 'trouble' && drafted.sentence).toMatch(reason);
  });
});
