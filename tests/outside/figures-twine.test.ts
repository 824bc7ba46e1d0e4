import { describe, expect, test } from 'vitest';
import { balesPerPackage, type LabelledFor } from '../../flows/figures/bales-per-package.ts';
import {
  runnageFromLength,
  texFromRunnage,
  twineLengthFromMass,
  twineMassOnBales,
} from '../../flows/figures/runnage.ts';
import { nextBallChange } from '../../flows/figures/splice-window.ts';
import { KNOT_STRENGTH_CLASSES, RUNNAGE_GRADES_M_PER_KG } from '../../flows/figures/twine-grades.ts';
import {
  checkLabelByCount,
  leastHonestLength,
  leastHonestStrength,
} from '../../flows/figures/twine-label.ts';
import { twinePerBale, twinePerBaleCounted, twinePerString } from '../../flows/figures/twine-per-bale.ts';
import { convert, inUnit } from '../../flows/figures/units.ts';

function bales(labelFt: number, perStringFt: number, labelledFor: LabelledFor, balls: number): number {
  const answer = balesPerPackage({ labelFt, labelledFor, balls }, perStringFt);
  if (answer.kind !== 'known') throw new Error('expected a known count');
  return answer.bales.value;
}

describe('twine on a bale', () => {
  // Source: "Calculating baling twine needs for hay season", a hobby-farm magazine: a bale of 3 ft by 1.5 ft with two
  // strings takes 18 ft, and 1,000 such bales take 18,000 ft, two 9,000 ft rolls.
  test('the published example of 18 feet', () => {
    const bale = { lengthIn: 36, heightIn: 18 };
    expect(twinePerBale(bale).value).toBe(18);
    expect(1000 * twinePerBale(bale).value).toBe(18_000);
    expect(bales(9000, twinePerString(bale).value, 'each ball', 2)).toBe(1000);
  });

  // Source: common practice, no source: 16.5 ft a bale of 36 by 14 in; strings bed in half an inch.
  test('the 16.5 feet of common practice is a bale half an inch lower', () => {
    expect(twinePerBale({ lengthIn: 36, heightIn: 13.5 }).value).toBe(16.5);
  });

  // Source: recomputed from strings x (2 (length + height)).
  test.each([
    [36, 14, '16.67', '5.08'],
    [38, 14, '17.33', '5.28'],
    [36, 16, '17.33', '5.28'],
    [40, 14, '18.00', '5.49'],
    [36, 18, '18.00', '5.49'],
    [48, 15.5, '21.17', '6.45'],
  ])('a bale of %f by %f in takes %s ft, %s m', (lengthIn, heightIn, feet, metres) => {
    const twine = twinePerBale({ lengthIn, heightIn });
    expect(twine.value.toFixed(2)).toBe(feet);
    expect(inUnit('length', twine, 'm').value.toFixed(2)).toBe(metres);
  });
});

describe('bales from a package', () => {
  // Source: recomputed: package length over twine a bale.
  test.each([
    [9000, 200 / 24, 540],
    [9000, 8.25, 545],
    [7200, 200 / 24, 432],
    [16_000, 200 / 24, 960],
    [20_000, 200 / 24, 1200],
  ])('%i ft in the package at %f ft a string ties %i', (labelFt, perStringFt, count) => {
    expect(bales(labelFt, perStringFt, 'whole package', 2)).toBe(count);
  });

  // Source: recomputed: ball length over twine a string, three balls chained on each side.
  test('a box of six 4,500 ft balls, three chained a side, ties three times a pair', () => {
    expect(bales(4500, 200 / 24, 'each ball', 2)).toBe(540);
    expect(bales(4500, 200 / 24, 'each ball', 6)).toBe(1620);
  });

  // Source: two trade texts read the same 9,000 ft differently: "9,000 feet a bale of twine" (a forage magazine,
  // "Baler twine: know what you're buying") and "a pair of 9,000-foot rolls" (a hobby-farm magazine, as above).
  test('the two readings of one label differ by two', () => {
    expect(bales(9000, 200 / 24, 'each ball', 2)).toBe(2 * bales(9000, 200 / 24, 'whole package', 2));
  });

  // Source: recomputed: 9 kg x 400 m/kg = 3,600 m, over 2.54 m a string.
  test('a 9 kg ball of 400 m/kg ties 1,417 bales', () => {
    const ball = twineLengthFromMass(9, 400);
    expect(ball.value).toBe(3600);
    expect(
      bales(inUnit('length', ball, 'ft').value, convert('length', 2.54, 'm', 'ft'), 'each ball', 2),
    ).toBe(1417);
  });

  // Source: recomputed: 540 bales a ball; warning ten bales before, window three after (expert estimates).
  test('the next ball change', () => {
    expect(nextBallChange(4500, 200 / 24, 400)).toEqual({
      balesPerBall: 540,
      balesLeft: 140,
      stage: 'steady',
    });
    expect(nextBallChange(4500, 200 / 24, 530).stage).toBe('change soon');
  });
});

describe('runnage', () => {
  // Source: recomputed from mass times runnage and tex = 1,000,000 / (m/kg); the 40 lb package is from memory.
  test.each([
    [9000, '225.0', '151.2', '6614'],
    [16_000, '400.0', '268.8', '3720'],
  ])('%i ft in 40 lb is %s ft/lb, %s m/kg, %s tex', (feet, footPerPound, metrePerKilo, tex) => {
    const runnage = runnageFromLength(convert('length', feet, 'ft', 'm'), convert('mass', 40, 'lb', 'kg'));
    expect(inUnit('runnage', runnage, 'ft/lb').value.toFixed(1)).toBe(footPerPound);
    expect(runnage.value.toFixed(1)).toBe(metrePerKilo);
    expect(texFromRunnage(runnage.value).value.toFixed(0)).toBe(tex);
  });

  // Source: an encyclopaedia page on baling twine: small high-density bales take 200 m/kg sisal (5,000 tex) or
  // 400 m/kg polypropylene (2,500 tex).
  test.each([
    [200, 5000, '297.6'],
    [400, 2500, '595.3'],
  ])('%i m/kg is %i tex, %s ft/lb', (grade, tex, footPerPound) => {
    expect(RUNNAGE_GRADES_M_PER_KG).toContain(grade);
    expect(texFromRunnage(grade).value).toBe(tex);
    expect(convert('runnage', grade, 'm/kg', 'ft/lb').toFixed(1)).toBe(footPerPound);
  });

  // Source: recomputed: 1,000 bales x 5.08 m over the runnage.
  test.each([
    [200, '25.4'],
    [400, '12.7'],
  ])('1,000 bales at %i m/kg carry %s kg', (grade, kilos) => {
    expect(twineMassOnBales(1000, convert('length', 5.08, 'm', 'ft'), grade).value.toFixed(1)).toBe(kilos);
  });
});

describe('labels', () => {
  // Source: ANSI/ASAE S315 as revised, from a trade summary: length at least 98.5 %, strength at least 95 % of label.
  test('9,000 ft must hold 8,865 ft, 130 lbf must hold 123.5 lbf', () => {
    expect(leastHonestLength(9000).value).toBe(8865);
    expect(leastHonestStrength(130).value).toBe(123.5);
  });

  // Source: recomputed: 470 / 540 and 9,000 / 470.
  test('470 bales where 540 were due', () => {
    const check = checkLabelByCount(9000, 540, 470);
    expect(check.share.toFixed(3)).toBe('0.870');
    expect(check.twinePerBale.value.toFixed(2)).toBe('19.15');
    expect(check.verdict).toBe('short twine or long bales: measure the bales first');
    expect(twinePerBaleCounted(9000, 540).value.toFixed(3)).toBe('16.667');
  });

  // Source: classes from the forage magazine above (130, 190) and from memory; newtons by NIST SP 811.
  test('knot strength classes in newtons', () => {
    expect(KNOT_STRENGTH_CLASSES.map(({ lbf }) => Math.round(convert('force', lbf, 'lbf', 'N')))).toEqual([
      489, 578, 756, 845, 934,
    ]);
  });
});
