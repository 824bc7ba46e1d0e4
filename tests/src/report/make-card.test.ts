import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Answer } from '../../../flows/diagnosis/answer.ts';
import { SEED_ESTIMATES } from '../../../flows/diagnosis/estimates.ts';
import { LINES } from '../../../flows/lines.ts';
import { LOCKOUT_STEPS, READY_STEPS, RELEASE_STEPS, SAFE_STOP_STEPS } from '../../../flows/lockout/steps.ts';
import { SYSTEM_VOID_LINES, sayHandOver } from '../../../flows/sayings.ts';
import { ruleOf } from '../../../grammar/lexicon.ts';
import { sayWhole } from '../../../grammar/say.ts';
import type { LogEntry } from '../../../src/records/log-entry.ts';
import { replay } from '../../../src/records/replay.ts';
import type { JobCard } from '../../../src/report/card.ts';
import { makeCard } from '../../../src/report/make-card.ts';
import { SUSPECTED_ABOVE, weighed } from '../../../src/report/suspects.ts';
import { anyJob } from '../../flows/diagnosis/any-answer.ts';
import { anyWalk } from '../records/random-job.ts';
import {
  BEGUN_AT_MS,
  byVoice,
  checkAsked,
  firstAnswer,
  foundInOrder,
  type Teller,
  toldJob,
} from './told-job.ts';

/** Two of ten missed before, and every counted tie was good. */
const mended: Teller = (prompt) =>
  prompt.state === 'job.inquiry.proving.askingRate'
    ? byVoice('value.missRate', { missCount: { misses: 2, bales: 10 } })
    : firstAnswer(prompt);

describe('the card of a job that was mended', () => {
  const card = makeCard({ entries: toldJob(mended) });

  it('says who, when, which side and the fault in the words it was told', () => {
    expect(card).toMatchObject({ person: 'RB', status: 'closed', side: 'left', startedAtMs: BEGUN_AT_MS });
    expect(card.symptom).toEqual({ words: 'it just lets the string go', by: 'voice' });
    expect(card.unresolved).toEqual([]);
  });

  it('proves the repair with the numbers of the count', () => {
    const proof = card.repairs.at(-1)?.proof;
    // 14 = ceil(ln 0.05 / ln 0.8); 1 - 0.05^(1/14) = 0.193; the run would come about by chance in
    // C(10,2)/C(24,2) = 45/276 of cases, were nothing changed.
    expect(card.repairs.at(-1)?.outcome).toBe('proved');
    expect(proof).toMatchObject({ needed: 14, clean: 14, confidence: 0.95 });
    expect(proof?.atMost).toBeCloseTo(1 - 0.05 ** (1 / 14), 12);
    expect(proof?.chanceOfNoChange).toBeCloseTo(45 / 276, 10);
    expect(proof?.claim).toBe(
      'After 14 good ties in a row without a miss it is 95 % sure that it now misses fewer than one bale in 5.',
    );
  });

  it('logs every step of the lockout in order, each with its clause', () => {
    const confirmed = card.lockout.flatMap((line) => (line.kind === 'confirmed' ? [line] : []));
    const steps = [...SAFE_STOP_STEPS, ...LOCKOUT_STEPS];
    expect(confirmed.slice(0, steps.length).map(({ text }) => text)).toEqual(
      steps.map(({ confirmedBy }) => ruleOf(confirmedBy).readBack),
    );
    expect(confirmed.slice(steps.length).map(({ text }) => text)).toEqual(
      [...READY_STEPS, ...RELEASE_STEPS].map(({ confirmedBy }) => ruleOf(confirmedBy).readBack),
    );
    expect(confirmed[0]?.answersTo).toEqual(SAFE_STOP_STEPS[0].answersTo);
    expect(confirmed.every(({ by }) => by === 'voice')).toBe(true);
  });
});

describe('the card of a job that was not mended', () => {
  it('says after how many ties it missed again, and claims nothing', () => {
    let good = 0;
    const card = makeCard({
      entries: toldJob((prompt, told, snapshot) => {
        if (snapshot.context.repairs[0]?.outcome === 'stillMisses') return undefined;
        if (prompt.expecting.meanings.includes('tie.good') && ++good > 3) return byVoice('tie.missed');
        return mended(prompt, told, snapshot);
      }),
    });
    expect(card.repairs[0]?.outcome).toBe('stillMisses');
    expect(card.repairs[0]?.proof?.claim).toBe('Not repaired: it missed again after 3 good ties.');
    expect(card.repairs[0]?.proof).not.toHaveProperty('atMost');
    expect(card.unresolved).toContain('The job is still open.');
  });

  it('says what is still to be counted', () => {
    let good = 0;
    const card = makeCard({
      entries: toldJob((prompt, told, snapshot) =>
        prompt.expecting.meanings.includes('tie.good') && ++good > 5
          ? undefined
          : mended(prompt, told, snapshot),
      ),
    });
    expect(card.repairs[0]?.proof?.claim).toMatch(/^Not proved yet, 9 to go\. After 5 good ties/);
    expect(card.unresolved).toContain('The last repair is not proved: the counting of ties did not finish.');
    expect(card.machineAsLeft).toBe('Under power for counting ties.');
  });

  it('holds a measured value with its unit, the typical band and where that comes from', () => {
    let isMeasured = false;
    const card = makeCard({
      entries: toldJob((prompt) => {
        if (isMeasured) return undefined;
        const check = checkAsked(prompt);
        if (prompt.state.endsWith('.accepting')) {
          isMeasured = true;
          return byVoice('yes');
        }
        if (check?.measure && prompt.expecting.value) {
          return byVoice('value.measured', { measurement: check.measure.plausible.low });
        }
        return check && !prompt.state.includes('Prepared') ? foundInOrder(check) : firstAnswer(prompt);
      }),
    });
    const measured = card.findings.at(-1)?.measured;
    expect(measured?.value).toMatchObject({ amount: expect.any(Number), unit: expect.any(String) });
    expect(measured?.typically).toMatch(/^Typical/);
    expect(measured?.provenance).toMatch(/from memory|expert estimate|common practice/);
  });

  it('hands over what was not answered and why it stopped', () => {
    const card = makeCard({
      entries: toldJob((prompt, told) => {
        if (prompt.state === 'job.inquiry.handedOver') return undefined;
        if (prompt.state.includes('knotPlace')) return byVoice('cannotSee');
        return told > 14 ? byVoice('handOver') : firstAnswer(prompt);
      }),
    });
    expect(card.status).toBe('handedOver');
    expect(card.unresolved).toContain('Not answered. Failed string: Where is the knot?');
    expect(card.unresolved).toContain('You asked to hand over.');
    // What is excluded has a list of its own; spoken numbers are no lines.
    expect(card.unresolved.every((line) => line.endsWith('.') || line.endsWith('?'))).toBe(true);
    expect(card.findings.some(({ asked }) => asked === 'Where is the knot?')).toBe(false);
  });

  it('leaves out an answer that was taken back', () => {
    let isTakenBack = false;
    const card = makeCard({
      entries: toldJob((prompt, told) => {
        if (told > 16) return undefined;
        if (prompt.state.includes('whichKnotter') && !isTakenBack) {
          isTakenBack = true;
          return byVoice('goBack');
        }
        return prompt.state.includes('knotPlace')
          ? byVoice(isTakenBack ? 'knot.neither' : 'knot.frontEnd')
          : firstAnswer(prompt);
      }),
    });
    const places = card.findings.filter(({ asked }) => asked === 'Where is the knot?');
    expect(places.map(({ answer }) => answer)).toEqual([ruleOf('knot.neither').readBack]);
  });
});

describe('the lockout log', () => {
  it('tells a void with its reason and the time of the tablet', () => {
    const card = makeCard({
      entries: toldJob((prompt, told) => {
        if (told === 5) return byVoice('void.keyGone');
        if (told === 6) return { type: 'void.slept' };
        return told > 6 ? undefined : firstAnswer(prompt);
      }),
    });
    expect(card.lockout.slice(-2)).toEqual([
      { kind: 'voided', atMs: BEGUN_AT_MS + 6 * 60_000, text: ruleOf('void.keyGone').readBack },
      { kind: 'voided', atMs: BEGUN_AT_MS + 7 * 60_000, text: SYSTEM_VOID_LINES['void.slept'] },
    ]);
  });

  it('does not count what was said too unclearly', () => {
    const card = makeCard({
      entries: toldJob((prompt, told) => {
        if (told === 2) return byVoice('lockout.energiesKnown', {}, 0.2);
        return told > 2 ? undefined : firstAnswer(prompt);
      }),
    });
    expect(card.lockout.map(({ kind }) => kind)).toEqual(['reached', 'confirmed', 'notTaken']);
  });

  it('does not count a step that nobody had asked for', () => {
    const card = makeCard({
      entries: toldJob((_prompt, told) => (told === 0 ? byVoice('lockout.keyInPocket') : undefined)),
    });
    expect(card.lockout).toEqual([]);
  });

  it('says "locked out" only after the try and the words, both since the last void', () => {
    fc.assert(
      fc.property(anyWalk, (steps) => {
        const { lockout } = cardOf(steps.map(({ draft }) => draft));
        lockout.forEach((line, index) => {
          if (line.kind !== 'reached' || line.state !== 'lockedOut') return;
          const before = lockout.slice(0, index);
          const since = before.slice(before.findLastIndex(({ kind }) => kind === 'voided') + 1);
          const said = since.flatMap((each) => (each.kind === 'confirmed' ? [each.text] : []));
          expect(said).toContain(ruleOf('lockout.keyInPocket').readBack);
          expect(said.slice(-2)).toEqual([
            ruleOf('lockout.triedNothingMoved').readBack,
            ruleOf('lockout.confirmed').readBack,
          ]);
        });
      }),
      { numRuns: 40 },
    );
  });
});

describe('any card', () => {
  it('excludes as many causes as the voice counts when it hands over, and suspects none of them', () => {
    const { context } = replay([]).snapshot;
    fc.assert(
      fc.property(anyJob, (answers) => {
        const { excluded, suspects } = weighed(answers, SEED_ESTIMATES);
        const spoken = sayHandOver({ ...context, answers, handOver: 'asked' }).slice(1);
        expect(spoken).toEqual(excluded.length === 0 ? [] : [LINES.excluded, ...sayWhole(excluded.length)]);
        const excludedCauses = excluded.map(({ cause }) => cause);
        expect(suspects.filter(({ cause }) => excludedCauses.includes(cause))).toEqual([]);
      }),
      { numRuns: 300, examples: [[EXCLUDED_YET_LIKELY]] },
    );
  });

  it('of a job that was told to the end excludes as many causes as the voice does', () => {
    fc.assert(
      fc.property(anyWalk, (steps) => {
        const context = steps.at(-1)?.after.context;
        if (!context) return;
        const { excluded } = cardOf(steps.map(({ draft }) => draft));
        const spoken = sayHandOver({ ...context, handOver: 'asked' }).slice(1);
        expect(spoken).toEqual(excluded.length === 0 ? [] : [LINES.excluded, ...sayWhole(excluded.length)]);
      }),
    );
  });

  it('has suspects by how likely they are, never more than certain, and grounds for whatever is excluded', () => {
    fc.assert(
      fc.property(anyJob, (answers) => {
        const { suspects, excluded } = weighed(answers, SEED_ESTIMATES);
        const chances = suspects.map(({ probability }) => probability);
        expect(chances).toEqual([...chances].sort((a, b) => b - a));
        expect(chances.reduce((sum, chance) => sum + chance, 0)).toBeLessThanOrEqual(1 + 1e-9);
        expect(chances.every((chance) => chance > SUSPECTED_ABOVE)).toBe(true);
        for (const { because } of excluded) {
          expect(because.length).toBeGreaterThan(0);
        }
      }),
    );
  });

  it('says so where the log was written by other charts', () => {
    const entries = toldJob((prompt, told) => (told > 8 ? undefined : firstAnswer(prompt)));
    const foreign = entries.map((entry) => (entry.seq === 4 ? { ...entry, promptState: 'older' } : entry));
    expect(makeCard({ entries: foreign }).unresolved.at(-1)).toContain('From its line 4 on');
  });

  it('refuses a log without a line', () => {
    expect(() => makeCard({ entries: [] })).toThrow('nothing to report');
  });
});

/** Here a cause is excluded, and yet likelier than what else is worth a thought has to be. */
const EXCLUDED_YET_LIKELY: readonly Answer[] = [
  { question: 'symptom', said: 'symptom.knotFailsLater' },
  { question: 'check.knotFailsLater.breakPlace', said: 'finding.brokeAnywhere' },
  { question: 'check.knotFailsLater.twineSnap', said: 'finding.twineStrong' },
];

function cardOf(drafts: readonly Pick<LogEntry, 'event' | 'promptState'>[]): JobCard {
  const all = [{ event: { type: 'record.started' }, promptState: 'record' } as const, ...drafts];
  return makeCard({
    entries: all.map((draft, seq) => ({ ...draft, jobId: 'a job', seq, atMs: seq, tabletId: 'a tablet' })),
  });
}
