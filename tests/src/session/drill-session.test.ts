import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type DrillSetup, LARGEST_SEED } from '../../../flows/drill/hidden-fault.ts';
import { DRILL_LEVELS } from '../../../flows/drill/levels.ts';
import { riskOf } from '../../../grammar/lexicon.ts';
import { type DrillSession, runDrill } from '../../../src/session/drill-session.ts';
import { careful } from '../../flows/drill/play.ts';
import { said, TestJob } from '../../flows/talk.ts';

const PACE_MS = 4_000;
const TRAP_PASSES_MS = 16_000;
const MOST_STEPS = 600;

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

function begin(setup?: DrillSetup): DrillSession {
  return runDrill({ setup, trainee: 'AB', nowMs: () => Date.now(), anyNumber: () => 417 });
}

function send(session: DrillSession, ...saying: Parameters<typeof said>): void {
  const event = said(...saying);
  if (!session.takes(event)) throw new Error(`${event.type} is not taken in ${session.prompt().state}.`);
  void session.send(event);
}

/** Plays on to the end beside a job of its own that hears what a job has to hear, and nothing else. */
function playBeside(session: DrillSession, shadow: TestJob, onStep: () => void): void {
  for (let step = 0; step < MOST_STEPS; step += 1) {
    vi.advanceTimersByTime(PACE_MS);
    const stage = session.stage.value;
    if (stage.at !== 'drill' || stage.drill.over) return;
    const reply = careful(stage.drill, shadow);
    if (reply === 'wait') {
      vi.advanceTimersByTime(TRAP_PASSES_MS);
      continue;
    }
    if (!stage.drill.pressed || riskOf(reply[0]) === 'void') shadow.send(said(...reply));
    send(session, ...reply);
    onStep();
  }
  throw new Error(`The drill goes round at ${session.prompt().state}.`);
}

describe('a drill that runs', () => {
  it('never moves the lockout by a hazard: its job stands where the answers alone put it', () => {
    const setups = fc.record({ seed: fc.nat(LARGEST_SEED), level: fc.constantFrom(...DRILL_LEVELS) });
    fc.assert(
      fc.property(setups, (setup) => {
        const session = begin(setup);
        const shadow = new TestJob();
        let hazards = 0;
        playBeside(session, shadow, () => {
          const truth = shadow.actor.getSnapshot();
          expect(session.snapshot.value.value).toEqual(truth.value);
          expect(session.snapshot.value.context.confirmedSteps).toEqual(truth.context.confirmedSteps);
          const stage = session.stage.value;
          if (stage.at !== 'drill' || stage.drill.over) return;
          expect(session.prompt().safety).toBe(shadow.prompt.safety);
          hazards = stage.drill.entries.filter(({ kind }) => kind === 'happened').length;
        });
        expect(hazards).toBeGreaterThan(0);
        session.dispose();
      }),
      { numRuns: 15 },
    );
  });

  it('takes nothing but an answer, or what voids, while somebody presses', () => {
    const session = begin({ seed: 3, level: 4 });
    const shadow = new TestJob();
    let pressed = 0;
    playBeside(session, shadow, () => {
      const stage = session.stage.value;
      if (stage.at !== 'drill' || !stage.drill.pressed) return;
      pressed += 1;
      const [usual] = shadow.prompt.expecting.meanings;
      expect(usual && session.takes(said(usual))).toBe(false);
      for (const type of ['pressure.refuse', 'pressure.giveIn', 'void.notSure', 'stop'] as const)
        expect(session.takes(said(type)), type).toBe(true);
    });
    expect(pressed).toBeGreaterThan(0);
    session.dispose();
  });
});

describe('a drill from one end to the other', () => {
  it('is set up aloud, debriefed point by point, back and forth, and then wants the written debrief', () => {
    const session = begin();
    expect(session.prompt().safety).toBe('keepOut');
    expect(session.takes(said('symptom.heldStrandLost'))).toBe(false);
    send(session, 'drill.levelOne');
    send(session, 'drill.anyNumber');
    send(session, 'yes');
    const stage = session.stage.value;
    expect(stage.at === 'drill' && stage.drill.machine.setup).toEqual({ level: 1, seed: 417 });
    expect(session.debrief()).toBeUndefined();
    playBeside(session, new TestJob(), () => {});
    expect(session.prompt().state).toBe('drill.stopped');
    expect(session.takes(said('goBack'))).toBe(false);
    send(session, 'carryOn');
    const first = session.prompt().question;
    send(session, 'carryOn');
    expect(session.prompt().question).not.toEqual(first);
    send(session, 'goBack');
    expect(session.prompt().question).toEqual(first);
    for (let point = 0; session.stage.value.at === 'debrief' && point < 20; point += 1)
      send(session, 'carryOn');
    expect(session.stage.value.at).toBe('heard');
    expect(session.debrief()).toMatchObject({ seed: 417, level: 1, trainee: 'AB', score: { passed: true } });
    session.dispose();
  });
});
