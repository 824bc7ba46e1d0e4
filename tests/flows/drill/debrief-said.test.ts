import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Debrief, debriefOf } from '../../../flows/drill/debrief.ts';
import { debriefPoints, debriefPrompt } from '../../../flows/drill/debrief-said.ts';
import { LATE_MS } from '../../../flows/drill/drill.ts';
import { hazardById } from '../../../flows/drill/hazards.ts';
import { type DrillSetup, LARGEST_SEED } from '../../../flows/drill/hidden-fault.ts';
import { DRILL_LEVELS } from '../../../flows/drill/levels.ts';
import { DEBRIEF_LINES } from '../../../flows/drill/lines.ts';
import { unspeakable } from '../figures-asked/say-everything.ts';
import { TestJob } from '../talk.ts';
import { careful, type Played, play, type Trainee } from './play.ts';

const setups: fc.Arbitrary<DrillSetup> = fc.record({
  seed: fc.nat(LARGEST_SEED),
  level: fc.constantFrom(...DRILL_LEVELS),
});

/** Tells nothing of a string, and guesses no better. */
const guessing: Trainee = (drill, job) =>
  job.prompt.state.startsWith('job.inquiry.triage.') &&
  !drill.pressed &&
  drill.interruption?.sinceMs === undefined
    ? ['notSure']
    : careful(drill, job);

/** Goes on whatever happens. */
const careless: Trainee = (drill, job) => {
  const { trap: _, pressed: __, interruption, ...rest } = drill;
  return careful(interruption ? { ...rest, interruption: { id: interruption.id } } : rest, job);
};

function debriefed({ drill, context }: Played): Debrief {
  return debriefOf(drill, context, { trainee: '', comment: '' });
}

/** Every hazard as noticed late. */
function late({ drill, context }: Played): Played {
  const entries = drill.entries.map((entry) =>
    entry.kind === 'noticed' ? { ...entry, afterMs: LATE_MS + 1 } : entry,
  );
  return { drill: { ...drill, entries }, context };
}

describe('the debrief, said', () => {
  it('is a few short points that can all be spoken, whatever was done', () => {
    fc.assert(
      fc.property(setups, fc.constantFrom(careful, guessing, careless), (setup, trainee) => {
        const points = debriefPoints(debriefed(play(setup, trainee)));
        expect(points.length).toBeGreaterThanOrEqual(4);
        expect(points.length).toBeLessThanOrEqual(9);
        for (const point of points) {
          expect(point.length).toBeGreaterThan(0);
          expect(unspeakable(point)).toEqual([]);
          const words = point.join(' ').split(' ').length;
          expect(words, point.join(' ')).toBeLessThan(60);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('begins with the hazards: a fatal error, else every one that was noticed late, else that none was', () => {
    for (let seed = 0; seed < 12; seed += 1) {
      const played = play({ seed, level: 3 }, careful);
      const noticed = played.drill.entries.flatMap((entry) =>
        entry.kind === 'noticed' ? [entry.hazard] : [],
      );
      expect(debriefPoints(debriefed(played))[0]).toEqual([
        noticed.length > 0 ? DEBRIEF_LINES.allInTime : DEBRIEF_LINES.noHazard,
      ]);
      const lateOnes = debriefPoints(debriefed(late(played))).slice(0, noticed.length);
      expect(lateOnes.map(([first, happens]) => [first, happens])).toEqual(
        noticed.map((hazard) => [DEBRIEF_LINES.late, hazardById(hazard).happens]),
      );
    }
    const fatal = play({ seed: 0, level: 2 }, careless);
    expect(fatal.drill.over).toBe('fatal');
    const [first, second] = debriefPoints(debriefed(fatal));
    expect(first?.[0]).toBe(DEBRIEF_LINES.fatal);
    expect(second).toEqual([DEBRIEF_LINES.noPoints]);
  });

  it('names an answer that was not what the machine showed, and only then', () => {
    const said = (trainee: Trainee) => debriefPoints(debriefed(play({ seed: 3, level: 2 }, trainee))).flat();
    expect(said(careful)).not.toContain(DEBRIEF_LINES.misread);
    expect(said(guessing)).toContain(DEBRIEF_LINES.misread);
  });

  it('sends a fatal error to the same drill, a miss to another number, a pass a level higher', () => {
    const passed = play({ seed: 3, level: 2 }, careful);
    expect(debriefed(passed).next).toBe('harder');
    expect(debriefed(late(passed)).next).toBe('another');
    expect(debriefed(play({ seed: 3, level: 4 }, careful)).next).toBe('hardest');
    expect(debriefed(play({ seed: 0, level: 2 }, careless)).next).toBe('again');
  });

  it('is asked one point at a time, and whoever says "say that again" hears the same', () => {
    const points = debriefPoints(debriefed(play({ seed: 3, level: 1 }, careful)));
    const job = new TestJob().prompt;
    points.forEach((point, at) => {
      const { question, brief, expecting, safety } = debriefPrompt(points, at, job);
      expect(question).toEqual(point);
      expect(brief).toEqual(point);
      expect(expecting.meanings).toEqual(['carryOn']);
      expect(safety).toBe('keepOut');
    });
  });
});
