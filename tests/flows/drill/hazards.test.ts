import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  answerPressure,
  arrive,
  beginDrill,
  type DrillState,
  judge,
  LATE_MS,
} from '../../../flows/drill/drill.ts';
import { PRESSURE_IDS, type PressureId, pressureById } from '../../../flows/drill/hazards.ts';
import { type DrillSetup, LARGEST_SEED } from '../../../flows/drill/hidden-fault.ts';
import { DRILL_LEVELS, LEVELS } from '../../../flows/drill/levels.ts';
import { narrated } from '../../../flows/drill/narrate.ts';
import { pointsOf, scoreOf } from '../../../flows/drill/score.ts';
import { said, TestJob } from '../talk.ts';
import { careful, type Played, play } from './play.ts';

const setups: fc.Arbitrary<DrillSetup> = fc.record({
  seed: fc.nat(LARGEST_SEED),
  level: fc.constantFrom(...DRILL_LEVELS),
});
const FEW = { numRuns: 40 };

describe('a hazard', () => {
  it('is told beside what the job holds true of the lockout, and never instead of it', () => {
    fc.assert(
      fc.property(setups, (setup) => {
        let heard = 0;
        play(setup, careful, 4_000, (drill, job) => {
          const { safety, expecting } = narrated(drill, job.prompt, job.context, () => false);
          expect(safety).toBe(drill.over ? 'keepOut' : job.prompt.safety);
          if (!drill.over && !drill.pressed) expect(expecting).toEqual(job.prompt.expecting);
          heard += 1;
        });
        expect(heard).toBeGreaterThan(0);
      }),
      FEW,
    );
  });
});

describe('somebody who presses', () => {
  it('comes no more often than the level has it, when the moment fits and nothing else stands', () => {
    fc.assert(
      fc.property(setups, (setup) => {
        const ids = new Set<PressureId>();
        play(setup, careful, 4_000, ({ pressed, trap, interruption }, job) => {
          if (!pressed) return;
          ids.add(pressed.id);
          expect(job.prompt.safety).toBe(pressureById(pressed.id).at);
          expect(trap).toBeUndefined();
          expect(interruption?.sinceMs).toBeUndefined();
        });
        expect(ids.size).toBeLessThanOrEqual(LEVELS[setup.level].pressures);
      }),
      FEW,
    );
  });

  it('ends the drill when the trainee gives in, and leaves the job where it was when refused', () => {
    const { job, drill } = pressedDrill();
    const { prompt } = job;
    expect(answerPressure(drill, 'pressure.giveIn', prompt, 1_000).over).toBe('fatal');
    const refused = answerPressure(drill, 'pressure.refuse', prompt, 1_000);
    expect(refused.pressed).toBeUndefined();
    expect(narrated(refused, prompt, job.context, () => false).state).toBe(prompt.state);
  });

  it('is refused as well by whatever takes the lockout away', () => {
    const { job, drill } = pressedDrill();
    const asked = { prompt: job.prompt, context: job.context };
    job.answer('void.notSure');
    const after = judge(drill, said('void.notSure'), asked, job.prompt, 1_000);
    expect(after.over).toBeUndefined();
    expect(after.entries.at(-1)).toMatchObject({ kind: 'noticed', afterMs: 1_000 });
    expect(job.prompt.safety).toBe('keepOut');
  });

  it('gives up when the tablet takes the lockout away meanwhile', () => {
    const { job, drill } = pressedDrill();
    job.send({ type: 'void.slept' });
    expect(arrive(drill, job.prompt, 1_000).pressed).toBeUndefined();
  });
});

describe('the points', () => {
  const samples = Array.from({ length: 12 }, (_, seed) => play({ seed, level: 4 }, careful));

  it('never fall when a hazard is noticed in time that was noticed late', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...samples),
        fc.array(fc.boolean(), { maxLength: 8 }),
        fc.nat(7),
        (played, lateness, which) => {
          const points = (late: readonly boolean[]) => scoreOf(...withLateness(played, late)).points;
          const better = lateness.map((isLate, at) => isLate && at !== which);
          expect(points(better)).toBeGreaterThanOrEqual(points(lateness));
        },
      ),
    );
  });

  it('are never more after a fatal error than without it', () => {
    for (const { drill, context } of samples) {
      const { points } = scoreOf(drill, context);
      expect(scoreOf({ ...drill, over: 'fatal' }, context).points).toBeLessThanOrEqual(points);
    }
  });

  it('never fall when one part is better', () => {
    const parts = fc.record({
      safety: share(),
      efficiency: share(),
      evidence: share(),
      verification: share(),
      record: share(),
    });
    fc.assert(
      fc.property(parts, fc.constantFrom(...PART_IDS), share(), (some, part, more) => {
        const better = { ...some, [part]: Math.max(some[part], more) };
        expect(pointsOf(better)).toBeGreaterThanOrEqual(pointsOf(some) - 1e-9);
      }),
    );
  });
});

const PART_IDS = ['safety', 'efficiency', 'evidence', 'verification', 'record'] as const;

function share() {
  return fc.double({ min: 0, max: 1, noNaN: true });
}

/** The n-th hazard that was noticed as noticed late, where the n-th of `late` says so; else in time. */
function withLateness({ drill, context }: Played, late: readonly boolean[]): Parameters<typeof scoreOf> {
  let count = 0;
  const entries = drill.entries.map((entry) => {
    if (entry.kind !== 'noticed') return entry;
    const isLate = late[count] ?? false;
    count += 1;
    return { ...entry, afterMs: isLate ? LATE_MS + 1 : LATE_MS };
  });
  return [{ ...drill, entries }, context];
}

/** A job at its safe stop, where somebody presses. */
function pressedDrill(): { readonly job: TestJob; readonly drill: DrillState } {
  const job = new TestJob().answer('symptom.heldStrandLost').throughSteps();
  const id = PRESSURE_IDS.find((each) => pressureById(each).at === job.prompt.safety);
  if (!id) throw new Error('Nobody presses at a safe stop.');
  const { interruption: _, ...drill } = beginDrill({ seed: 1, level: 4 });
  return { job, drill: { ...drill, pressed: { id, sinceMs: 0 } } };
}
