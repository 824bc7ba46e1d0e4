import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkQuestion, evidenceQuestion } from '../../../flows/diagnosis/answer.ts';
import { answerProbability, type Hypothesis } from '../../../flows/diagnosis/beliefs.ts';
import { EVIDENCE_IDS, evidenceAnswerIndex, evidenceAnswers } from '../../../flows/diagnosis/estimates.ts';
import { type EvidenceId, FAMILY_PRIORS } from '../../../flows/diagnosis/evidence.ts';
import { findingOf as answerForMeasurement } from '../../../flows/diagnosis/measured.ts';
import { dealtMachine } from '../../../flows/drill/deal.ts';
import { debriefOf } from '../../../flows/drill/debrief.ts';
import { LATE_MS } from '../../../flows/drill/drill.ts';
import { findingOf, type PlayedMachine, symptomTold } from '../../../flows/drill/finding.ts';
import { INTERRUPTION_IDS, PRESSURE_IDS, TRAP_IDS, trapById } from '../../../flows/drill/hazards.ts';
import {
  candidates,
  type DrillSetup,
  hiddenFault,
  isHidden,
  isPutRight,
  LARGEST_SEED,
} from '../../../flows/drill/hidden-fault.ts';
import { DRILL_LEVELS } from '../../../flows/drill/levels.ts';
import { narrated } from '../../../flows/drill/narrate.ts';
import { answerTo, policyPath } from '../../../flows/drill/path.ts';
import { efficiency, pointsOf, scoreOf } from '../../../flows/drill/score.ts';
import { drawn, fnv1a } from '../../../flows/drill/seeded.ts';
import { FAMILIES, familyById } from '../../../flows/families/all.ts';
import { type Check, FAMILY_IDS, type FamilyId, SOMETHING_ELSE } from '../../../flows/families/family.ts';
import { TestJob } from '../talk.ts';
import { careful, play, type Trainee } from './play.ts';

const setups: fc.Arbitrary<DrillSetup> = fc.record({
  seed: fc.nat(LARGEST_SEED),
  level: fc.constantFrom(...DRILL_LEVELS),
});
const FEW = { numRuns: 60 };

function forEveryCheck(act: (family: FamilyId, name: string, check: Check) => void): void {
  for (const { id, checks } of FAMILIES)
    for (const [name, check] of Object.entries(checks)) act(id, name, check);
}

function firstWithTwoFaults(): PlayedMachine {
  for (let seed = 0; seed <= LARGEST_SEED; seed += 1) {
    const machine = dealtMachine({ seed, level: 3 });
    if (machine.hidden.faults.length > 1) return machine;
  }
  throw new Error('No drill hides two faults.');
}

describe('chance by seed', () => {
  /** Test vectors of FNV-1a, 32 bits: IETF draft "The FNV Non-Cryptographic Hash Algorithm", appendix C. */
  it('hashes as published', () => {
    expect(fnv1a('')).toBe(0x811c9dc5);
    expect(fnv1a('a')).toBe(0xe40c292c);
    expect(fnv1a('foobar')).toBe(0xbf9cf968);
  });

  it('is even enough over the seeds', () => {
    const draws = Array.from({ length: 10_000 }, (_, seed) => drawn(seed, 'any'));
    const tenths = Array.from({ length: 10 }, (_, at) =>
      draws.filter((draw) => Math.floor(draw * 10) === at),
    );
    // Chi-squared with 9 degrees of freedom: 27.9 is the 99.9 percent point (NIST/SEMATECH e-Handbook, 1.3.6.7.4).
    const chi = tenths.reduce((sum, { length }) => sum + (length - 1000) ** 2 / 1000, 0);
    expect(chi).toBeLessThan(27.9);
  });
});

describe('the hidden fault', () => {
  it('is the same for the same seed, and of its level', () => {
    fc.assert(
      fc.property(setups, (setup) => {
        const hidden = hiddenFault(setup);
        expect(hiddenFault({ ...setup })).toEqual(hidden);
        for (const fault of hidden.faults)
          expect(candidates(setup.level)).toContainEqual(expect.objectContaining(fault));
      }),
    );
  });

  it('comes as often as the tables have it', () => {
    const count = 5_000;
    for (const family of FAMILY_IDS) {
      const share =
        Array.from({ length: count }, (_, seed) => hiddenFault({ seed, level: 2 })).filter(
          ({ faults }) => faults[0].family === family,
        ).length / count;
      const p = FAMILY_PRIORS[family];
      expect(Math.abs(share - p), family).toBeLessThan(4 * Math.sqrt((p * (1 - p)) / count));
    }
  });

  it('at the first level needs no hands in the machine', () => {
    expect(candidates(1).length).toBeGreaterThanOrEqual(3);
    for (const { family, cause } of candidates(1)) {
      const remedy = FAMILIES.find(({ id }) => id === family)?.causes[cause]?.remedy;
      expect(remedy?.reach).toBe('safeStop');
    }
  });
});

describe('what the machine of a drill shows', () => {
  it('is an answer its question takes, and a number reads as that answer', () => {
    fc.assert(
      fc.property(setups, (setup) => {
        const machine = dealtMachine(setup);
        forEveryCheck((family, name, check) => {
          const finding = findingOf(machine, checkQuestion(family, name));
          expect(check.answers.map(({ meaning }) => meaning)).toContain(answerTo(finding));
          if (finding?.kind !== 'measured' || !check.measure) return;
          expect(answerForMeasurement(finding.measurement, check.measure)).toBe(finding.meaning);
        });
      }),
      FEW,
    );
  });

  it('is possible by the tables of what is hidden', () => {
    fc.assert(
      fc.property(setups, (setup) => {
        const machine = dealtMachine(setup);
        const { faults } = machine.hidden;
        forEveryCheck((family, name, check) => {
          const said = answerTo(findingOf(machine, checkQuestion(family, name)));
          const causes = faults.map((fault) => (fault.family === family ? fault.cause : SOMETHING_ELSE));
          expect(Math.max(...causes.map((cause) => answerProbability(check, said, cause)))).toBeGreaterThan(
            0,
          );
        });
        for (const id of EVIDENCE_IDS) {
          const said = answerTo(findingOf(machine, evidenceQuestion(id)));
          const answer = evidenceAnswers(id)[evidenceAnswerIndex(id, said)];
          expect(answer?.given[faults[0].family]).toBeGreaterThan(0);
        }
      }),
      FEW,
    );
  });

  it('shows each answer to the evidence as often as the tables have it', () => {
    const counts = new Map<string, number>();
    const families = new Map<FamilyId, number>();
    const count = 4_000;
    for (let seed = 0; seed < count; seed += 1) {
      const setup = { seed, level: 2 } as const;
      const hidden = hiddenFault(setup);
      const [{ family }] = hidden.faults;
      families.set(family, (families.get(family) ?? 0) + 1);
      for (const id of EVIDENCE_IDS) {
        const said = answerTo(findingOf({ setup, hidden, dealtBy: seed }, evidenceQuestion(id)));
        const key = `${family} ${id} ${evidenceAnswerIndex(id, said)}`;
        counts.set(key, (counts.get(key) ?? 0) + 1);
      }
    }
    for (const [family, drills] of families) {
      for (const id of EVIDENCE_IDS) {
        evidenceAnswers(id).forEach(({ given }, at) => {
          const p = given[family];
          const share = (counts.get(`${family} ${id} ${at}`) ?? 0) / drills;
          // Four standard errors; half a drill more where hardly any is expected.
          const slack = 4 * Math.sqrt((p * (1 - p)) / drills) + 0.5 / drills;
          expect(Math.abs(share - p), `${family} ${id} ${at}`).toBeLessThan(slack);
        });
      }
    }
  });

  it('misleads at the third level in what a string or a memory shows', () => {
    const usual = (id: EvidenceId, family: FamilyId) =>
      evidenceAnswers(id).reduce((best, answer) =>
        answer.given[family] > best.given[family] ? answer : best,
      );
    for (let seed = 0; seed < 60; seed += 1) {
      const machine = dealtMachine({ seed, level: 3 });
      const [{ family }] = machine.hidden.faults;
      const unusual = EVIDENCE_IDS.filter((id) => {
        const said = answerTo(findingOf(machine, evidenceQuestion(id)));
        return !usual(id, family).meanings.includes(said);
      });
      expect(unusual.some((id) => id !== 'needleSigns' && id !== 'whichKnotter')).toBe(true);
    }
  });

  it('is a number within two marks of a limit at the third level, where the band has one', () => {
    let near = 0;
    for (let seed = 0; seed < 40; seed += 1) {
      const machine = dealtMachine({ seed, level: 3 });
      forEveryCheck((family, name, { measure }) => {
        const finding = findingOf(machine, checkQuestion(family, name));
        if (finding?.kind !== 'measured') return;
        const { amount } = finding.measurement;
        const limits = measure?.bands.flatMap(({ below }) => (below ? [below.amount] : [])) ?? [];
        const mark = amount >= 4 ? 1 : 1 / 16;
        if (limits.some((limit) => Math.abs(limit - amount) <= 2 * mark)) near += 1;
        else expect(limits.length, `${family} ${name}: ${amount}`).toBeGreaterThan(1);
      });
    }
    expect(near).toBeGreaterThan(100);
  });

  it('no longer shows a fault that was put right, beside one that stands', () => {
    const machine = firstWithTwoFaults();
    const { faults } = machine.hidden;
    const pointing = (repairs: readonly Hypothesis[]) => {
      let count = 0;
      forEveryCheck((family, name, check) => {
        const said = answerTo(findingOf(machine, checkQuestion(family, name), repairs));
        if (check.answers.find(({ meaning }) => meaning === said)?.pointsAtFault) count += 1;
      });
      return count;
    };
    expect(pointing([faults[0]])).toBeLessThan(pointing([]));
    expect(pointing(faults)).toBeLessThan(pointing([faults[0]]));
  });
});

describe('every drill can be solved', () => {
  it('by the tables: the findings lead to all that was hidden', () => {
    fc.assert(
      fc.property(setups, (setup) => {
        const machine = dealtMachine(setup);
        const { end } = policyPath(machine, symptomTold(machine));
        const isForDealer = machine.hidden.faults.some(
          ({ family, cause }) => familyById(family).causes[cause]?.remedy.refer !== undefined,
        );
        expect(end).toBe(isForDealer ? 'referred' : 'putRight');
      }),
      { numRuns: 100 },
    );
  });

  it('by somebody careful, whatever comes between', () => {
    fc.assert(
      fc.property(setups, (setup) => {
        const { drill, context } = play(setup, careful);
        const { hidden } = drill.machine;
        const { trainee } = scoreOf(drill, context);
        if (trainee.end === 'putRight') expect(isPutRight(hidden, context.repairs)).toBe(true);
        else {
          expect(trainee.end).toBe('referred');
          expect(context.next.kind === 'name' && isHidden(hidden, context.next)).toBe(true);
        }
      }),
      FEW,
    );
  });
});

describe('a careful trainee', () => {
  it('ends every drill alive, reads every bit, and passes', () => {
    fc.assert(
      fc.property(setups, (setup) => {
        const { drill, context } = play(setup, careful);
        expect(drill.over).toBe('ended');
        const score = scoreOf(drill, context);
        expect(score.safety).toBe(1);
        expect(score.evidence).toBe(1);
        expect(score.passed).toBe(true);
      }),
      FEW,
    );
  });

  /** Where nothing takes the lockout away, the same answers lead the same way. */
  it('goes the policy’s own way, at its cost, where nothing came between', () => {
    fc.assert(
      fc.property(setups, (setup) => {
        const { drill, context } = play(setup, careful, 1);
        const inVain = context.repairs.filter(({ outcome }) => outcome !== 'proved');
        fc.pre(inVain.length === 0 && !drill.entries.some(({ kind }) => kind === 'noticed'));
        const { trainee, policy } = scoreOf(drill, context);
        const plain = (steps: typeof trainee.steps) => steps.map(({ of, minutes }) => ({ of, minutes }));
        expect(plain(trainee.steps)).toEqual(plain(policy.steps));
      }),
      FEW,
    );
  });

  it('meets every hazard somewhere in the first hundred seeds', () => {
    const met = new Set<string>();
    for (let seed = 0; seed < 100; seed += 1) {
      for (const entry of play({ seed, level: 4 }, careful).drill.entries) {
        if (entry.kind === 'happened') met.add(entry.hazard);
      }
    }
    expect([...met].sort()).toEqual([...TRAP_IDS, ...INTERRUPTION_IDS, ...PRESSURE_IDS].sort());
  });
});

describe('a fatal error', () => {
  /** Says whatever the step asks for, true or not, and goes on whatever happens. */
  const careless: Trainee = (drill, job) => {
    const { trap: _, interruption, ...rest } = drill;
    const blind = interruption ? { ...rest, interruption: { id: interruption.id } } : rest;
    return careful(blind, job);
  };

  it('stops the drill over the hazard that stood, with no points', () => {
    const ends = new Set<string>();
    for (let seed = 0; seed < 60; seed += 1) {
      const { drill, context } = play({ seed, level: 2 }, careless);
      const happened = drill.entries.some(({ kind }) => kind === 'happened');
      expect(drill.over).toBe(happened ? 'fatal' : 'ended');
      if (!happened) continue;
      const last = drill.entries.at(-1);
      if (last?.kind !== 'fatal') throw new Error('The drill ended with something else.');
      ends.add(last.hazard);
      expect(scoreOf(drill, context)).toMatchObject({ fatal: true, safety: 0, points: 0, passed: false });
    }
    expect(ends.size).toBeGreaterThan(4);
  });

  it('is to confirm exactly the step a trap makes untrue', () => {
    for (const id of TRAP_IDS) {
      const { state, untrue } = trapById(id);
      expect(state.split('.').at(-1)).toBe(untrue.split('.').at(-1));
    }
  });

  it('leaves nothing to answer but to go on to the debrief', () => {
    const { drill } = play({ seed: 1, level: 2 }, careless);
    const job = new TestJob();
    const prompt = narrated(drill, job.prompt, job.context, () => false);
    expect(prompt.expecting).toEqual({ meanings: ['carryOn'] });
    expect(prompt.state).toBe('drill.stopped');
    expect(prompt.safety).toBe('keepOut');
  });
});

describe('the score', () => {
  /** Worked example: 15.04 expected minutes of the best order against 23 taken. */
  it('holds the minutes taken against the best', () => {
    expect(efficiency(15.04, 23)).toBeCloseTo(0.654, 3);
    expect(efficiency(15.04, 10)).toBe(1);
    expect(efficiency(15.04, 0)).toBe(1);
  });

  it('is full marks in every part, and nothing for nothing', () => {
    const all = (value: number) => ({
      safety: value,
      efficiency: value,
      evidence: value,
      verification: value,
      record: value,
    });
    expect(pointsOf(all(1))).toBeCloseTo(100, 10);
    expect(pointsOf(all(0))).toBe(0);
  });

  it('takes a quarter of the safety part for a hazard noticed late, and then does not pass', () => {
    const { drill, context } = play({ seed: 3, level: 2 }, careful);
    const entries = drill.entries.map((entry) =>
      entry.kind === 'noticed' ? { ...entry, afterMs: LATE_MS + 1 } : entry,
    );
    const late = entries.filter(({ kind }) => kind === 'noticed').length;
    expect(late).toBeGreaterThan(0);
    const score = scoreOf({ ...drill, entries }, context);
    expect(score.safety).toBe(1 - 0.25 * late);
    expect(score.passed).toBe(false);
  });

  it('gives no bits for an answer that was not what the machine showed', () => {
    const guessing: Trainee = (drill, job) =>
      job.prompt.state.startsWith('job.inquiry.triage.') && drill.interruption?.sinceMs === undefined
        ? ['notSure']
        : careful(drill, job);
    const { drill, context } = play({ seed: 3, level: 2 }, guessing);
    expect(scoreOf(drill, context).evidence).toBe(0);
  });

  it('counts no tie that was missed as a good one', () => {
    const hopeful: Trainee = (drill, job) => {
      const reply = careful(drill, job);
      return reply !== 'wait' && reply[0] === 'tie.missed' ? ['tie.good'] : reply;
    };
    const scores = Array.from({ length: 80 }, (_, seed) => play({ seed, level: 2 }, hopeful)).flatMap(
      ({ drill, context }) => {
        const lied = drill.entries.some(
          (entry) =>
            entry.kind === 'said' && entry.meaning === 'tie.good' && answerTo(entry.shown) === 'tie.missed',
        );
        return lied ? [scoreOf(drill, context)] : [];
      },
    );
    expect(scores.length).toBeGreaterThan(0);
    for (const { verification, efficiency: share } of scores) {
      expect(verification).toBeLessThan(1);
      expect(share).toBe(0);
    }
  });
});

it('the debrief says that it was a drill, what was hidden, and survives being saved', () => {
  const { drill, context } = play({ seed: 7, level: 1 }, careful);
  const debrief = debriefOf(drill, context, { trainee: 'AB', comment: '' });
  expect(debrief.notice).toContain('No machine was looked at');
  expect(debrief.belief).toHaveLength(context.answers.length + 1);
  expect(debrief.belief.every(({ probability }) => probability >= 0 && probability <= 1)).toBe(true);
  expect(debrief.timeline.map(({ atS }) => atS)).toEqual(
    [...debrief.timeline.map(({ atS }) => atS)].sort((a, b) => a - b),
  );
  expect(JSON.parse(JSON.stringify(debrief))).toEqual(debrief);
});
