import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createActor } from 'xstate';
import { beliefsAfter } from '../../flows/diagnosis/beliefs.ts';
import type { JobEvent } from '../../flows/heard.ts';
import { SYSTEM_VOIDS } from '../../flows/heard.ts';
import { jobMachine } from '../../flows/job.ts';
import { MEANING_IDS, type MeaningId } from '../../grammar/lexicon.ts';
import { spokenTexts } from '../../src/build/spoken-texts.ts';
import { said, TestJob } from './talk.ts';

/** Whether the inquiry has the floor with a question, which is where "go back one" withdraws an answer. */
function isAnsweredAtTheMachine({ prompt }: TestJob): boolean {
  return prompt.state.endsWith('.admitted') || prompt.state.endsWith('.asking');
}

/** A job that has been told the left knotter lets go, and stands at a safe stop with the knot on the front end. */
function atFirstCheck(): TestJob {
  return new TestJob()
    .answer('symptom.heldStrandLost', { side: 'left' })
    .throughSteps()
    .answer('knot.frontEnd')
    .answer('needles.quiet');
}

function atHolderPull(): TestJob {
  return atFirstCheck()
    .answer('finding.clean')
    .answer('finding.sound')
    .answer('finding.balesSame')
    .throughSteps();
}

function atProof(): TestJob {
  return atHolderPull().answer('finding.slipsEasily').answer('thatIsDone').answer('thatIsDone');
}

function countingTies(): TestJob {
  return atProof()
    .answer('value.missRate', { missCount: { misses: 2, bales: 10 } })
    .answer('yes')
    .answer('carryOn')
    .throughSteps();
}

describe('one job, from the first word to the closed record', () => {
  it('shuts down before eyes go in, and locks out before hands go in', () => {
    const job = new TestJob();
    expect(job.prompt.safety).toBe('keepOut');
    job.answer('symptom.heldStrandLost', { side: 'left' });
    expect(job.prompt.safety).toBe('stopping');
    job.throughSteps();
    expect(job.prompt.safety).toBe('eyesOnly');
    expect(job.context.confirmedSteps).toHaveLength(7);
    expect(atHolderPull().prompt.safety).toBe('lockedOut');
    expect(atHolderPull().context.confirmedSteps).toHaveLength(16);
  });

  it('takes the side from the opening words', () => {
    expect(atFirstCheck().context.side).toBe('left');
    expect(atFirstCheck().context.answers.map(({ question }) => question)).toContain('evidence.whichKnotter');
  });

  it('reads a measured value back and judges it by its band only after a yes', () => {
    const job = atHolderPull().answer('value.measured', { measurement: { amount: 30, unit: 'poundForce' } });
    expect(job.prompt.question.join(' ')).toContain('thirty');
    const before = job.context.answers.length;
    job.answer('yes');
    expect(job.context.answers).toHaveLength(before + 1);
    expect(job.context.answers.at(-1)).toMatchObject({
      said: 'finding.slipsEasily',
      measurement: { amount: 30, unit: 'poundForce' },
    });
  });

  it('questions a value that cannot be, and stores nothing', () => {
    const job = atHolderPull();
    const { answers } = job.context;
    job.answer('value.measured', { measurement: { amount: 4000, unit: 'poundForce' } });
    expect(job.prompt.notices.join(' ')).toContain('outside what I expect');
    expect(job.context.answers).toEqual(answers);
  });

  it('names the cause, proves it by counted ties, and closes', () => {
    const job = countingTies();
    expect(job.prompt.safety).toBe('poweredTest');
    // 2 misses in 10 bales: 14 clean ties rule that rate out at 95 %, since 0.8 ^ 14 < 0.05.
    for (let tie = 1; tie <= 14; tie += 1) job.answer('tie.good');
    expect(job.prompt.question.join(' ')).toContain('fewer than one bale in five');
    job.answer('yes');
    expect(job.prompt.state).toBe('closed');
    expect(job.context.repairs).toMatchObject([{ cause: 'holderLoose', outcome: 'proved' }]);
  });

  it('goes on looking after a miss, and does not propose the same cause again', () => {
    const job = countingTies().answer('tie.good').answer('tie.missed');
    expect(job.prompt.safety).toBe('stopping');
    expect(job.context.repairs).toMatchObject([{ cause: 'holderLoose', outcome: 'stillMisses' }]);
    expect(job.context.next).not.toMatchObject({ kind: 'name', cause: 'holderLoose' });
  });

  it('does not lend the proof of one repair to the next', () => {
    const job = countingTies().answer('tie.good').answer('tie.missed');
    for (let steps = 0; job.context.repairs.length < 2 && steps < 80; steps += 1) {
      const { meanings } = job.prompt.expecting;
      const answer =
        (['carryOn', 'thatIsDone', 'finding.packed'] as const).find((m) => meanings.includes(m)) ??
        meanings[0];
      if (answer) job.answer(answer);
    }
    expect(job.context.repairs).toHaveLength(2);
    expect(job.context.repairs[0]?.proof?.clean).toBe(1);
    expect(job.context.repairs[1]?.proof).toBeUndefined();
  });

  it('ends the count and keeps the job when the ties are left for later', () => {
    const job = countingTies().answer('tie.good').answer('test.finished');
    expect(job.prompt.safety).toBe('keepOut');
    job.answer('carryOn').throughSteps();
    expect(job.context.proof?.clean).toBe(1);
  });
});

describe('a lockout under way', () => {
  it('shows neither eyes nor hands, but the one step, while it is built and while it is taken down', () => {
    const building = atFirstCheck();
    while (!building.prompt.state.startsWith('job.safety.lockingOut')) {
      const { meanings } = building.prompt.expecting;
      building.answer(meanings.at(-1) ?? 'stop');
    }
    expect(building.prompt.safety).toBe('thisStepOnly');
    const closingUp = atProof()
      .answer('value.missRate', { missCount: { misses: 2, bales: 10 } })
      .answer('yes')
      .answer('carryOn')
      .answer('release.needlesThreaded')
      .answer('release.toolsOut');
    expect(closingUp.prompt.safety).toBe('thisStepOnly');
  });

  it('does not take a yes, a neighbour’s phrase or a doubtful voice for a step', () => {
    const job = new TestJob().answer('symptom.heldStrandLost');
    const { state } = job.prompt;
    for (const wrong of ['yes', 'thatIsDone', 'lockout.keyInPocket', 'lockout.confirmed'] as const)
      job.send(said(wrong));
    job.send(said('lockout.everyoneTold', {}, { by: 'voice', margin: 0.75, snrDb: 30 }));
    expect(job.prompt.state).toBe(state);
    expect(job.prompt.notices.join(' ')).toContain('more clearly');
    job.send(said('lockout.everyoneTold', {}, { by: 'voice', margin: 0.9, snrDb: 4 }));
    expect(job.prompt.state).toBe(state);
    job.send(said('lockout.everyoneTold', {}, { by: 'voice', margin: 0.9, snrDb: 25 }));
    expect(job.prompt.state).not.toBe(state);
  });

  it('finishes a tripped knotter by hand, and locks out again from the flywheel on', () => {
    const job = atFirstCheck().answer('finding.clean').answer('finding.sound').answer('finding.balesSame');
    while (!job.prompt.state.endsWith('knotterHome')) job.answer(job.prompt.expecting.meanings[0] ?? 'stop');
    job.answer('lockout.knotterTripped').answer('handTurn.toolsOut').answer('handTurn.peopleClear');
    job.answer('handTurn.blocksOff').answer('handTurn.cycleHome');
    expect(job.prompt.state).toBe('job.safety.lockingOut.flywheelHeld');
    expect(job.throughSteps().prompt.safety).toBe('lockedOut');
  });

  it('gives short instructions the second time round', () => {
    const job = new TestJob().answer('symptom.heldStrandLost', { side: 'left' });
    const first = job.prompt.question.join(' ');
    job.throughSteps().send({ type: 'void.handedRound' }).answer('carryOn');
    expect(job.prompt.question.join(' ').length).toBeLessThan(first.length);
  });
});

const anyEvent: fc.Arbitrary<JobEvent> = fc.oneof(
  {
    weight: 20,
    arbitrary: fc.constantFrom<MeaningId>(...MEANING_IDS).map((type) => said(type, slotsFor(type))),
  },
  { weight: 1, arbitrary: fc.constantFrom(...SYSTEM_VOIDS).map((type) => ({ type })) },
);

function slotsFor(type: MeaningId) {
  if (type === 'value.measured') return { measurement: { amount: 52, unit: 'poundForce' as const } };
  if (type === 'value.missRate') return { missCount: { misses: 1, bales: 8 } };
  return {};
}

describe('whatever is said, in whatever order', () => {
  const clips = new Set(spokenTexts());

  /** Mostly answers that are asked for, so that a walk gets deep, with anything else in between. */
  function walk(picks: readonly number[], strays: readonly JobEvent[], visit: (job: TestJob) => void): void {
    const job = new TestJob();
    visit(job);
    picks.forEach((pick, index) => {
      const { meanings, value } = job.prompt.expecting;
      const asked = [...meanings, ...(value?.kind === 'missCount' ? (['value.missRate'] as const) : [])];
      const chosen = asked[pick % Math.max(1, asked.length)];
      if (chosen) job.send(said(chosen, slotsFor(chosen)));
      const stray = strays[index];
      if (stray && pick % 7 === 0) job.send(stray);
      visit(job);
    });
  }

  it('asks something, and has a clip for every word of it', () => {
    fc.assert(
      fc.property(
        fc.array(fc.nat(1000), { maxLength: 90 }),
        fc.array(anyEvent, { maxLength: 90 }),
        (picks, strays) => {
          walk(picks, strays, ({ prompt }) => {
            const spoken = [...prompt.notices, ...prompt.question, ...prompt.brief, ...prompt.why];
            expect(prompt.question.length).toBeGreaterThan(0);
            expect(spoken.filter((text) => !clips.has(text))).toEqual([]);
          });
        },
      ),
      { numRuns: 150 },
    );
  });

  it('loses no recorded answer', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(1000), { maxLength: 60 }), (picks) => {
        let before: TestJob['context'] | undefined;
        walk(picks, [], ({ context }) => {
          if (before) expect(context.answers.slice(0, before.answers.length)).toEqual(before.answers);
          before = context;
        });
      }),
      { numRuns: 60 },
    );
  });

  it('goes back to the same question with the same beliefs after a withdrawn answer', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(1000), { maxLength: 60 }), (picks) => {
        let before: { state: string; answers: TestJob['context']['answers'] } | undefined;
        walk(picks, [], (job) => {
          const { answers } = job.context;
          const wasAnswered = before && answers.length === before.answers.length + 1;
          if (before && wasAnswered && isAnsweredAtTheMachine(job)) {
            const undone = createActor(jobMachine, {
              snapshot: jobMachine.getPersistedSnapshot(job.actor.getSnapshot()),
            }).start();
            undone.send(said('goBack'));
            const { context } = undone.getSnapshot();
            expect(context.answers).toEqual(before.answers);
            expect(beliefsAfter(context.answers)).toEqual(beliefsAfter(before.answers));
          }
          before = { state: job.prompt.state, answers };
        });
      }),
      { numRuns: 60 },
    );
  });

  it('ends: closed or handed over within a bounded number of answers', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(1000), { minLength: 400, maxLength: 400 }), (picks) => {
        let over = false;
        walk(picks, [], ({ prompt }) => {
          over ||= prompt.state === 'closed' || prompt.state.endsWith('handedOver');
        });
        expect(over).toBe(true);
      }),
      { numRuns: 40 },
    );
  });
});
