import { describe, expect, it } from 'vitest';
import { type WearingPart, wearOutlook } from '../../../src/records/wear.ts';
import { wearText } from '../../../src/report/wear-chart.tsx';
import { BLANK_WEAR, wearDraftOf, wearingParts } from '../../../src/screens/wear-drafts.ts';

const HOLDER: WearingPart = {
  name: 'Left twine holder',
  limitMm: 0.5,
  limitSource: 'page 12',
  from: 'new at zero',
  readings: [
    { bales: 5_000, wearMm: 0.1 },
    { bales: 10_000, wearMm: 0.22 },
    { bales: 15_000, wearMm: 0.31 },
  ],
};

describe('the wear line of a machine', () => {
  it('says when the limit comes, between which counts, and what is left', () => {
    // By hand: slope 0.0210 mm a thousand bales through the origin, t(2) = 4.303, error 0.00046.
    const outlook = wearOutlook(HOLDER);
    if (outlook.kind !== 'forecast') throw new Error(outlook.says);
    expect(outlook.limitAt.value / 1000).toBeCloseTo(23.8, 1);
    expect(outlook.earliestLimitAt.value / 1000).toBeCloseTo(21.7, 0);
    expect(outlook.latestLimitAt.value / 1000).toBeCloseTo(26.3, 0);
    expect(outlook.balesLeft.value).toBeCloseTo(outlook.earliestLimitAt.value - 15_000, 6);
    expect(wearText(HOLDER)).toMatch(
      /0\.31 mm at 15,000 bales.*Limit 0\.5 mm, from page 12.*Bales left, to be safe: 6,.*Measure again at 1\d,\d+\.$/,
    );
    // One reading more, past the count at which it was to be measured again.
    const late = [...HOLDER.readings, { bales: 22_000, wearMm: 0.46 }];
    expect(wearText({ ...HOLDER, readings: late })).toMatch(/Measure again now\.$/);
  });

  it.each([
    [[], 'There are 0.'],
    [HOLDER.readings.slice(0, 1), 'There is 1.'],
    [[{ bales: 0, wearMm: 0 }, ...HOLDER.readings.slice(0, 1)], 'There is 1.'],
  ])('says what is missing where there are too few readings: %j', (readings, tail) => {
    const outlook = wearOutlook({ ...HOLDER, readings });
    expect(outlook.kind === 'no wear trend' && outlook.says).toContain(tail);
    expect(wearText({ ...HOLDER, readings })).toContain(tail);
  });

  it('needs one reading more where the part was run in', () => {
    expect(wearOutlook({ ...HOLDER, from: 'run in', readings: HOLDER.readings.slice(0, 2) }).kind).toBe(
      'no wear trend',
    );
  });
});

describe('a wearing part as it is typed', () => {
  it('comes back as it was kept', () => {
    expect(wearingParts([wearDraftOf(HOLDER), BLANK_WEAR])).toEqual({ kind: 'value', value: [HOLDER] });
  });

  it.each([
    [{ name: '' }, /needs a name/],
    [{ limitMm: '0' }, /limit has to be 0.01 to 50/],
    [{ limitMm: '-1' }, /limit has to be/],
    [{ limitSource: ' ' }, /where its limit comes from/],
    [{ readings: [{ bales: '', wearMm: '0.2' }] }, /whole number of bales/],
    [{ readings: [{ bales: '100.5', wearMm: '0.2' }] }, /whole number of bales/],
    [{ readings: [{ bales: '100', wearMm: '51' }] }, /0 to 50 millimetres/],
  ])('%j is refused with its reason', (change, reason) => {
    const parts = wearingParts([{ ...wearDraftOf(HOLDER), ...change }]);
    expect(parts.kind === 'trouble' && parts.sentence).toMatch(reason);
  });
});
