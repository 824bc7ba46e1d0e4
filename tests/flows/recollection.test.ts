import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asideFor } from '../../flows/asides.ts';
import { PARTS, type PartId } from '../../flows/knotter.ts';
import { placeLine, RECALL_LINES, sayAbout, sayOutcome, sayRecord } from '../../flows/recollection.ts';
import { ruleOf } from '../../grammar/lexicon.ts';
import { NAMED_PART_IDS } from '../../grammar/named-parts.ts';
import { anyWalk } from '../src/records/random-job.ts';
import { unspeakable } from './figures-asked/say-everything.ts';
import { TestJob } from './talk.ts';

describe('the record, read aloud', () => {
  it('can be spoken after whatever happened, and never says what was not said', () => {
    fc.assert(
      fc.property(anyWalk, (steps) => {
        const last = steps.at(-1);
        if (!last) return;
        const { context } = last.after;
        expect(unspeakable(sayRecord(context))).toEqual([]);
        expect(unspeakable(sayOutcome(context))).toEqual([]);
        const readBacks = new Set(context.answers.map(({ said }) => ruleOf(said).readBack));
        for (const part of NAMED_PART_IDS) {
          const say = sayAbout(part, context);
          expect(say.length).toBeGreaterThan(0);
          expect(unspeakable(say)).toEqual([]);
          if (say[0] === RECALL_LINES.nothingAbout) continue;
          const places = (Object.keys(PARTS) as PartId[]).map(placeLine);
          expect(places).toContain(say[0]);
          expect(readBacks).toContain(say[1]);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('is empty before the first answer', () => {
    const { context } = new TestJob();
    expect(sayRecord(context)).toEqual([RECALL_LINES.nothingYet]);
    expect(sayAbout('spring', context)).toEqual([RECALL_LINES.nothingAbout]);
  });

  it('tells of bales that were counted, also where nothing else was said yet', () => {
    const counted = { misses: 2, bales: 60 };
    const told = [RECALL_LINES.counted, 'two', 'out of', 'sixty', 'bales'];
    expect(sayRecord(new TestJob().context, counted)).toEqual([RECALL_LINES.record, ...told]);
    const job = new TestJob().answer('symptom.heldStrandLost');
    expect(sayRecord(job.context, counted)).toEqual(expect.arrayContaining(told));
    expect(sayRecord(job.context, { misses: 0, bales: 0 })).not.toContain(RECALL_LINES.counted);
    const aside = asideFor('recall.record', job.prompt, job.context, {}, undefined, counted);
    expect(aside?.say).toEqual(sayRecord(job.context, counted));
  });

  it('says where, what and how much', () => {
    const job = new TestJob().answer('symptom.heldStrandLost');
    const context = {
      ...job.context,
      answers: [
        ...job.context.answers,
        {
          question: 'check.heldStrandLost.holderPull',
          said: 'finding.slipsEasily',
          measurement: { amount: 20, unit: 'poundForce' },
        },
      ] as const,
    };
    const spring = sayAbout('spring', context);
    expect(spring).toEqual(['The twine holder:', 'It slips too easily.', 'twenty', 'pounds of pull']);
    expect(sayRecord(context)).toEqual([
      RECALL_LINES.record,
      ruleOf('symptom.heldStrandLost').readBack,
      RECALL_LINES.faults,
      ...spring,
    ]);
    expect(sayAbout('wiper', context)).toEqual([RECALL_LINES.nothingAbout]);
  });

  it('is an aside, by whole and by part, and changes nothing', () => {
    const job = new TestJob().answer('symptom.heldStrandLost');
    const { prompt, context } = job;
    expect(asideFor('recall.record', prompt, context)).toEqual({ kind: 'record', say: sayRecord(context) });
    expect(asideFor('recall.part', prompt, context, { part: 'needle' })).toEqual({
      kind: 'record',
      say: sayAbout('needle', context),
    });
    expect(job.actor.getSnapshot().can({ type: 'recall.record', slots: {}, channel: { by: 'touch' } })).toBe(
      false,
    );
  });
});
