import { describe, expect, it } from 'vitest';
import type { MeaningId } from '../../../grammar/lexicon.ts';
import type { Slots } from '../../../grammar/understand.ts';
import type { LogEntry } from '../../../src/records/log-entry.ts';
import { lastReadings, readingText } from '../../../src/report/last-readings.ts';
import { TestJob } from '../../flows/talk.ts';

/** The log of a job in which the pull of the left twine holder was measured, once or more. */
function jobWithPulls(day: number, ...pounds: readonly number[]): readonly LogEntry[] {
  const job = new TestJob();
  const log: LogEntry[] = [];
  const say = (type: MeaningId, slots: Slots = {}) => {
    const promptState = job.prompt.state;
    job.answer(type, slots);
    log.push({
      jobId: 'a job',
      seq: log.length,
      atMs: Date.UTC(2026, 6, day, 8, log.length),
      event: { type, slots, channel: { by: 'touch' } },
      promptState,
      tabletId: 'a tablet',
    });
  };
  const throughSteps = () => {
    for (;;) {
      const asked = job.prompt.expecting.meanings[0];
      if (!asked || !/^(lockout|handTurn|release)\./.test(asked)) return;
      say(asked);
    }
  };
  say('symptom.heldStrandLost', { side: 'left' });
  throughSteps();
  for (const found of [
    'knot.frontEnd',
    'needles.quiet',
    'finding.clean',
    'finding.sound',
    'finding.balesSame',
  ] as const) {
    say(found);
  }
  throughSteps();
  for (const [at, amount] of pounds.entries()) {
    if (at > 0) say('goBack');
    say('value.measured', { measurement: { amount, unit: 'poundForce' } });
    say('yes');
  }
  return log;
}

describe('the last readings of a machine', () => {
  it('are those of the newest job, as they stand after what was taken back', () => {
    const [reading, ...others] = lastReadings([jobWithPulls(20, 33, 36), jobWithPulls(4, 52)]);
    expect(others).toEqual([]);
    expect(reading).toMatchObject({
      of: 'holderPull',
      side: 'left',
      measurement: { amount: 36, unit: 'poundForce' },
    });
    expect(reading && readingText(reading)).toMatch(
      /^Pull at which the twine holder lets the strand go, left knotter: 36 lbf, 20 Jul 2026/,
    );
  });

  it('are none where nothing was measured', () => {
    expect(lastReadings([])).toEqual([]);
    expect(lastReadings([jobWithPulls(1)])).toEqual([]);
  });
});
