import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  BETTER_AFTER_READINGS,
  GRADE_BOUNDS,
  type HearingQuality,
  hearingAfter,
  UNHEARD,
  WORSE_AFTER_READINGS,
} from '../../../audio/ears/hearing-quality.ts';
import { HEARING_GRADES, type HearingGrade } from '../../../grammar/hearing-grade.ts';

const { good, fair, poor } = GRADE_BOUNDS;
const rank = (grade: HearingGrade) => HEARING_GRADES.indexOf(grade);

/** Every state of the ears along some readings. */
function along(readingsDb: readonly number[], from: HearingQuality = UNHEARD): HearingQuality[] {
  let now = from;
  return readingsDb.map((ratioDb) => {
    now = hearingAfter(now, ratioDb);
    return now;
  });
}

const heardOver = (readingsDb: readonly number[], from?: HearingQuality) =>
  along(readingsDb, from).at(-1) ?? UNHEARD;
const steady = (ratioDb: number, readings = BETTER_AFTER_READINGS) => Array<number>(readings).fill(ratioDb);

/** Noise that rises and falls: stretches of it, each at a level of its own, some flickering. */
const noise = fc
  .array(
    fc.record({
      ratioDb: fc.double({ min: -20, max: 45, noNaN: true }),
      flickerDb: fc.double({ min: 0, max: 6, noNaN: true }),
      readings: fc.integer({ min: 1, max: 80 }),
    }),
    { minLength: 1, maxLength: 8 },
  )
  .map((stretches) =>
    stretches.flatMap(({ ratioDb, flickerDb, readings }) =>
      Array.from({ length: readings }, (_, i) => ratioDb + (i % 2 === 0 ? flickerDb : -flickerDb)),
    ),
  );

const someTime = noise.map((readingsDb) => heardOver(readingsDb));

describe('how well the ears hear', () => {
  it('has every bound over the one of the grade below, and earns a grade dearer than it keeps it', () => {
    for (const { keptFromDb, earnedFromDb } of [good, fair, poor])
      expect(earnedFromDb).toBeGreaterThan(keptFromDb);
    expect([poor.keptFromDb, fair.keptFromDb, good.keptFromDb]).toEqual(
      [good, fair, poor].map(({ keptFromDb }) => keptFromDb).sort((a, b) => a - b),
    );
    expect([poor.earnedFromDb, fair.earnedFromDb, good.earnedFromDb]).toEqual(
      [good, fair, poor].map(({ earnedFromDb }) => earnedFromDb).sort((a, b) => a - b),
    );
    expect(WORSE_AFTER_READINGS).toBeLessThan(BETTER_AFTER_READINGS);
  });

  it.each<[number, HearingGrade]>([
    [40, 'good'],
    [good.keptFromDb, 'good'],
    [good.keptFromDb - 0.1, 'fair'],
    [fair.keptFromDb, 'fair'],
    [fair.keptFromDb - 0.1, 'poor'],
    [poor.keptFromDb, 'poor'],
    [poor.keptFromDb - 0.1, 'too loud'],
    [-20, 'too loud'],
  ])('coming from the quiet, %d dB is %s', (ratioDb, grade) => {
    expect(heardOver(steady(ratioDb, WORSE_AFTER_READINGS)).grade).toBe(grade);
    expect(heardOver(steady(ratioDb, WORSE_AFTER_READINGS - 1)).grade).toBe('good');
  });

  it('reaches every grade from every other one', () => {
    const keptAt: Record<HearingGrade, number> = {
      good: 40,
      fair: fair.earnedFromDb,
      poor: poor.earnedFromDb,
      'too loud': -20,
    };
    for (const from of HEARING_GRADES)
      for (const to of HEARING_GRADES) {
        const settled = heardOver(steady(keptAt[from], 300), heardOver(steady(-20)));
        expect(settled.grade).toBe(from);
        expect(heardOver(steady(keptAt[to], 300), settled).grade).toBe(to);
      }
  });

  it('gets better one grade at a time, and no sooner than after a full stretch of better readings', () => {
    fc.assert(
      fc.property(noise, (readingsDb) => {
        let before = UNHEARD;
        let held = 0;
        for (const ratioDb of readingsDb) {
          const now = hearingAfter(before, ratioDb);
          held += 1;
          const up = rank(now.grade) - rank(before.grade);
          expect(up).toBeLessThanOrEqual(1);
          if (up === 1) expect(held).toBeGreaterThanOrEqual(BETTER_AFTER_READINGS);
          if (up !== 0) held = 0;
          before = now;
        }
      }),
    );
  });

  it('trusts no room further than a second of it allows, however good it was before', () => {
    fc.assert(
      fc.property(someTime, fc.double({ min: -20, max: 45, noNaN: true }), (before, ratioDb) => {
        const { grade } = heardOver(steady(ratioDb, WORSE_AFTER_READINGS), before);
        if (grade !== 'too loud') expect(ratioDb).toBeGreaterThanOrEqual(GRADE_BOUNDS[grade].keptFromDb);
      }),
    );
  });

  it('does not flap: readings between what keeps a grade and what earns it neither take it nor give it', () => {
    const isUnder = fc.boolean();
    const shares = fc.array(fc.double({ min: 0, max: 0.999, noNaN: true }), {
      minLength: 120,
      maxLength: 120,
    });
    fc.assert(
      fc.property(
        fc.constantFrom(good, fair, poor),
        isUnder,
        shares,
        ({ keptFromDb, earnedFromDb }, under, band) => {
          const readingsDb = band.map((share) => keptFromDb + share * (earnedFromDb - keptFromDb));
          const settled = under
            ? heardOver(steady(keptFromDb - 0.1))
            : heardOver(steady(earnedFromDb, 300), heardOver(steady(-20)));
          for (const { grade } of along(readingsDb, settled)) expect(grade).toBe(settled.grade);
        },
      ),
    );
  });

  it('is not moved by noise shorter than a second, however loud', () => {
    const bang = steady(-20, WORSE_AFTER_READINGS - 1);
    for (const { grade } of along([...steady(30), ...bang, ...steady(30)])) expect(grade).toBe('good');
  });

  it('hears no better in more noise: louder rooms never have the better grade', () => {
    fc.assert(
      fc.property(
        noise,
        fc.array(fc.double({ min: 0, max: 30, noNaN: true }), { minLength: 1 }),
        (quiet, more) => {
          const loud = quiet.map((ratioDb, i) => ratioDb - (more[i % more.length] ?? 0));
          const [quieter, louder] = [along(quiet), along(loud)];
          quieter.forEach(({ grade }, i) => {
            expect(rank(louder[i]?.grade ?? 'good')).toBeLessThanOrEqual(rank(grade));
          });
        },
      ),
    );
  });

  it('changes no more than once up and once down for each grade while the noise swells and dies away once', () => {
    const swell = Array.from({ length: 1_200 }, (_, i) => 20 + 25 * Math.cos((2 * Math.PI * i) / 1_200));
    const grades = along(swell).map(({ grade }) => grade);
    const changes = grades.filter((grade, i) => i > 0 && grade !== grades[i - 1]);
    expect(changes).toEqual(['fair', 'poor', 'too loud', 'poor', 'fair', 'good']);
  });
});
