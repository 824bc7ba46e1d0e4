import { describe, expect, it } from 'vitest';
import {
  HAND_TURN_STEPS,
  LOCKOUT_STEPS,
  type ProcedureStep,
  READY_STEPS,
  RELEASE_STEPS,
  SAFE_STOP_STEPS,
} from '../../flows/lockout/steps.ts';

/**
 * Sources: 29 CFR 1910.147(d)(1) to (d)(6), the sequence of applying energy control (prepare, shut down, isolate,
 * apply the devices, relieve stored energy, verify); 29 CFR 1910.147(e)(1) to (3), release; (f)(1), testing; and
 * 29 CFR 1928.57(a)(6), operating instructions for farm machinery. The paragraph numbers of (c), (e), (f) and of
 * 1928.57 are from memory; 1910.147(a)(1)(ii)(A) leaves farm work out of the first of them.
 */
const BEFORE_POWER: readonly ProcedureStep[] = [...READY_STEPS, ...RELEASE_STEPS];
const LOCKOUT: readonly ProcedureStep[] = [...SAFE_STOP_STEPS, ...LOCKOUT_STEPS];

function places(clause: string, steps: readonly ProcedureStep[] = LOCKOUT): number[] {
  return steps.flatMap(({ answersTo }, index) =>
    answersTo.some((cited) => cited.startsWith(clause)) ? [index] : [],
  );
}

function first(clause: string): number {
  return places(clause)[0] ?? Number.NaN;
}

function last(clause: string): number {
  return places(clause).at(-1) ?? Number.NaN;
}

describe('the lockout against 29 CFR 1910.147(d)', () => {
  it('has sixteen steps, each of which cites a clause', () => {
    expect(LOCKOUT).toHaveLength(16);
    for (const { id, answersTo } of LOCKOUT) expect(answersTo.length, id).toBeGreaterThan(0);
  });

  it.each([1, 2, 3, 4, 5, 6])('answers paragraph (d)(%i)', (paragraph) => {
    expect(places(`29 CFR 1910.147(d)(${paragraph})`)).not.toEqual([]);
  });

  it('prepares before it shuts down, shuts down before it isolates, and verifies last', () => {
    expect(first('29 CFR 1910.147(d)(1)')).toBeLessThan(first('29 CFR 1910.147(d)(2)'));
    expect(first('29 CFR 1910.147(d)(2)')).toBeLessThan(first('29 CFR 1910.147(d)(3)'));
    expect(last('29 CFR 1910.147(d)(3)')).toBeLessThan(last('29 CFR 1910.147(d)(5)'));
    expect(last('29 CFR 1910.147(d)(5)')).toBeLessThan(first('29 CFR 1910.147(d)(6)'));
    expect(last('29 CFR 1910.147(d)(6)')).toBe(LOCKOUT.length - 1);
  });

  it('tells the people affected before anything else: (c)(9)', () => {
    expect(first('29 CFR 1910.147(c)(9)')).toBe(0);
  });
});

describe('the lockout against 29 CFR 1928.57(a)(6)', () => {
  it('clears people first, then stops the engine, waits for all movement to stop, and disconnects the power', () => {
    const [engineOff, stillness, disconnected] = places('29 CFR 1928.57(a)(6)(iii)');
    expect(LOCKOUT[engineOff ?? -1]?.id).toBe('engineOff');
    expect(LOCKOUT[stillness ?? -1]?.id).toBe('flywheelStopped');
    expect(LOCKOUT[disconnected ?? -1]?.id).toBe('shaftOff');
    expect(first('29 CFR 1928.57(a)(6)(iv)')).toBeLessThan(engineOff ?? -1);
  });
});

describe('release and testing against 29 CFR 1910.147(e) and (f)', () => {
  it('clears tools, then people, before devices come off for a hand turn: (f)(1)', () => {
    expect(places('29 CFR 1910.147(f)(1)', HAND_TURN_STEPS)).toEqual([0, 1, 2]);
    expect(HAND_TURN_STEPS.map(({ id }) => id)).toEqual(['toolsOut', 'peopleClear', 'blocksOff']);
  });

  it('inspects the work area before the devices come off, and has nobody near when power returns: (e)', () => {
    expect(Math.max(...places('29 CFR 1910.147(e)(1)', BEFORE_POWER))).toBeLessThan(
      Math.min(...places('29 CFR 1910.147(e)(3)', BEFORE_POWER)),
    );
    expect(RELEASE_STEPS.at(-1)?.id).toBe('nobodyNear');
  });
});
