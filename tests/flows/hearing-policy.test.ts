import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HEARING_CHOICES, hearingInventory, policyFor, sayHearing } from '../../flows/hearing-policy.ts';
import { spokenByFlows } from '../../flows/spoken.ts';
import { activeMeanings, FEW_MEANINGS, type Reach } from '../../grammar/expecting.ts';
import { HEARING_GRADES } from '../../grammar/hearing-grade.ts';
import { type MeaningId, riskOf, ruleOf, SYMPTOM_MEANINGS, VOID_MEANINGS } from '../../grammar/lexicon.ts';
import { INQUIRY_STATES } from '../grammar/states.ts';
import { said, TestJob } from './talk.ts';

const REACHES: readonly Reach[] = ['voids', 'asked', 'everything'];
const TRUST = ['not taken', 'held until accepted', 'taken'] as const;

describe('what voice may do in noise', () => {
  it.each(HEARING_CHOICES)('is never more in more noise, by the choice "%s"', (choice) => {
    const policies = HEARING_GRADES.map((grade) => policyFor(grade, choice));
    policies.slice(1).forEach((quieter, i) => {
      const louder = policies[i] ?? quieter;
      expect(REACHES.indexOf(louder.reach)).toBeLessThanOrEqual(REACHES.indexOf(quieter.reach));
      expect(TRUST.indexOf(louder.answers)).toBeLessThanOrEqual(TRUST.indexOf(quieter.answers));
      expect(Number(louder.confirmsByVoice)).toBeLessThanOrEqual(Number(quieter.confirmsByVoice));
    });
  });

  it.each(HEARING_GRADES)('is never more by a choice than the noise leaves when it is %s', (grade) => {
    const left = policyFor(grade, 'automatic');
    for (const chosen of HEARING_CHOICES.map((choice) => policyFor(grade, choice))) {
      expect(REACHES.indexOf(chosen.reach)).toBeLessThanOrEqual(REACHES.indexOf(left.reach));
      expect(TRUST.indexOf(chosen.answers)).toBeLessThanOrEqual(TRUST.indexOf(left.answers));
      expect(Number(chosen.confirmsByVoice)).toBeLessThanOrEqual(Number(left.confirmsByVoice));
    }
  });

  it.each(REACHES)('whatever takes a lockout away is listened for within the reach "%s"', (reach) => {
    const voids: readonly MeaningId[] = ['stop', ...VOID_MEANINGS];
    expect(activeMeanings({ meanings: SYMPTOM_MEANINGS, reach })).toEqual(expect.arrayContaining([...voids]));
  });

  it.each(INQUIRY_STATES)(
    '%s: the shorter list is part of the longer, and has every answer that is asked for',
    (_, expecting) => {
      const [voids, asked, everything] = REACHES.map((reach) => activeMeanings({ ...expecting, reach }));
      expect(asked).toEqual(expect.arrayContaining([...(voids ?? []), ...expecting.meanings]));
      expect(everything).toEqual(expect.arrayContaining([...(asked ?? [])]));
      expect(asked?.length).toBeLessThan((everything?.length ?? 0) / 1.5);
      expect(voids?.some((meaning) => expecting.meanings.includes(meaning))).toBe(false);
    },
  );
});

describe('what is said when the hearing changes', () => {
  it('is something for every change, and something else each time', () => {
    for (const from of HEARING_GRADES)
      for (const to of HEARING_GRADES) {
        const say = sayHearing(from, to, 'automatic');
        expect(say.length > 0).toBe(from !== to);
        // One instruction at a time, each short enough for a noisy place.
        for (const line of say) expect(line.split(' ').length).toBeLessThanOrEqual(9);
        expect(sayHearing(from, to, 'buttonsOnly')).toEqual([]);
      }
    const openings = ['poor', 'fair', 'too loud'] as const;
    expect(new Set(openings.map((to) => sayHearing('good', to, 'automatic')[0])).size).toBe(3);
  });

  it('promises nobody who is always asked back that his answers are taken at once', () => {
    expect(sayHearing('poor', 'fair', 'alwaysAskBack').join(' ')).not.toContain('at once');
    expect(sayHearing('poor', 'fair', 'automatic').join(' ')).toContain('at once');
  });

  it('has a recorded clip', () => {
    expect(spokenByFlows()).toEqual(expect.arrayContaining([...hearingInventory()]));
  });
});

describe('an answer that is taken', () => {
  it('is said back before the next question, wherever it is given', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(), { minLength: 30, maxLength: 30 }), (choices) => {
        const job = new TestJob();
        for (const choice of choices) {
          job.throughSteps();
          const open = [...job.prompt.expecting.meanings, ...FEW_MEANINGS].filter(
            (meaning) => riskOf(meaning) === 'answer' && job.actor.getSnapshot().can(said(meaning)),
          );
          const meaning = open[choice % open.length];
          if (!meaning) return;
          job.answer(meaning, {}, { by: 'voice', margin: 0.9, snrDb: 9 });
          // A tie that was missed is answered by what it means for the repair.
          if (meaning !== 'tie.missed')
            expect(job.prompt.notices, meaning).toContain(ruleOf(meaning).readBack);
        }
      }),
      { numRuns: 25 },
    );
  });
});

describe('a step of the lockout', () => {
  it.each(['poor', 'too loud'] as const)(
    'is not confirmed by voice when the hearing is %s, however clear; by button it is',
    (hearing) => {
      const job = new TestJob().answer('symptom.heldStrandLost');
      const { state } = job.prompt;
      job.send(said('lockout.everyoneTold', {}, { by: 'voice', margin: 1, snrDb: 40, hearing }));
      expect(job.prompt.state).toBe(state);
      expect(job.prompt.notices.join(' ')).toContain('Press the button');
      job.send(said('lockout.everyoneTold'));
      expect(job.prompt.state).not.toBe(state);
    },
  );

  it.each(['good', 'fair', undefined] as const)(
    'is confirmed by a clear voice when the hearing is %s',
    (hearing) => {
      const job = new TestJob().answer('symptom.heldStrandLost');
      const { state } = job.prompt;
      const heard = hearing ? { hearing } : {};
      job.send(said('lockout.everyoneTold', {}, { by: 'voice', margin: 1, snrDb: 40, ...heard }));
      expect(job.prompt.state).not.toBe(state);
    },
  );

  it.each(HEARING_GRADES)('is voided by voice when the hearing is %s', (hearing) => {
    const job = new TestJob().answer('symptom.heldStrandLost').answer('lockout.everyoneTold');
    job.send(said('void.engineHeard', {}, { by: 'voice', margin: 0.1, snrDb: 0, hearing }));
    expect(job.prompt.state).toBe('job.safety.unknown.voided');
  });
});
