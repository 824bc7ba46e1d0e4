import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Answer,
  checkQuestion,
  evidenceQuestion,
  type QuestionId,
  repairQuestion,
} from '../../../flows/diagnosis/answer.ts';
import { beliefsAfter, familyProbability } from '../../../flows/diagnosis/beliefs.ts';
import { type NextStep, nextStep } from '../../../flows/diagnosis/next-step.ts';
import { FAMILIES, familyById } from '../../../flows/families/all.ts';
import type { FamilyId } from '../../../flows/families/family.ts';
import type { MeaningId } from '../../../grammar/lexicon.ts';
import { anyJob, NOTHING_LEARNT, QUESTIONS } from './any-answer.ts';

const OPENED: Answer = { question: 'symptom', said: 'symptom.heldStrandLost' };

/** The question a step puts, or undefined where it puts none. */
function questionOf(step: NextStep): QuestionId | undefined {
  switch (step.kind) {
    case 'open':
      return 'symptom';
    case 'evidence':
      return evidenceQuestion(step.question);
    case 'check':
      return checkQuestion(step.family, step.check);
    case 'name':
      return repairQuestion(step.family, step.cause);
    case 'handOver':
      return undefined;
  }
}

function saidTo(question: QuestionId): readonly MeaningId[] {
  return QUESTIONS.find((entry) => entry.question === question)?.said ?? [];
}

/** What a check shows where it points at a fault, or where it does not. */
function shown({ family, check }: { family: FamilyId; check: string }, fault: boolean): MeaningId {
  const answer = familyById(family).checks[check]?.answers.find(
    ({ pointsAtFault }) => pointsAtFault === fault,
  );
  return answer?.meaning ?? 'notSure';
}

/** A whole dialogue, each answer picked from what may be said by the next of the given numbers. */
function dialogue(picks: readonly number[]): { readonly answers: readonly Answer[]; readonly end: NextStep } {
  const answers: Answer[] = [];
  for (let count = 0; ; count += 1) {
    const step = nextStep(
      answers,
      answers.some(({ question }) => question.startsWith('repair.')),
    );
    const question = questionOf(step);
    if (question === undefined) return { answers, end: step };
    const said = saidTo(question);
    const pick = said[(picks[count % picks.length] ?? 0) % said.length];
    if (pick === undefined) throw new Error(`Nothing may be said to ${question}.`);
    answers.push({ question, said: pick });
    if (count > 300) throw new Error('The dialogue goes round.');
  }
}

const anyPicks = fc.array(fc.nat({ max: 1000 }), { minLength: 1, maxLength: 40 });

describe('a dialogue', () => {
  test('always ends in a hand-over when no repair holds, whatever is answered', () => {
    fc.assert(
      fc.property(anyPicks, (picks) => {
        expect(dialogue(picks).end.kind).toBe('handOver');
      }),
      { numRuns: 60 },
    );
  });

  test('asks nothing twice, but for a check nobody was sure of', () => {
    fc.assert(
      fc.property(anyPicks, (picks) => {
        const { answers } = dialogue(picks);
        answers.forEach(({ question }, index) => {
          const before = answers.slice(0, index).filter((answer) => answer.question === question);
          expect(before.length).toBeLessThanOrEqual(1);
          for (const { said } of before) expect(said).toBe('notSure');
        });
      }),
      { numRuns: 60 },
    );
  });

  test('decides from the answers, not from their order', () => {
    const shuffled = anyJob.chain((answers) =>
      fc.tuple(
        fc.constant(answers),
        fc.shuffledSubarray([...answers], { minLength: answers.length, maxLength: answers.length }),
        fc.boolean(),
      ),
    );
    fc.assert(
      fc.property(shuffled, ([answers, reordered, live]) => {
        const { kind, ...step } = nextStep(answers, live);
        const again = nextStep(reordered, live);
        expect(again.kind).toBe(kind);
        expect(questionOf(again)).toBe(questionOf({ kind, ...step } as NextStep));
      }),
    );
  });

  test('steps back to the same question when an answer is withdrawn', () => {
    fc.assert(
      fc.property(anyPicks, (picks) => {
        const { answers } = dialogue(picks);
        const cut = answers.length - 1;
        const asked = questionOf(nextStep(answers.slice(0, cut), true));
        nextStep(answers, true);
        expect(questionOf(nextStep(answers.slice(0, cut), true))).toBe(asked);
      }),
      { numRuns: 40 },
    );
  });
});

describe('triage', () => {
  test('opens with the person’s own words', () => {
    expect(nextStep([], false)).toEqual({ kind: 'open' });
  });

  test('asks first what tells most by the second', () => {
    expect(nextStep([{ question: 'symptom', said: 'notSure' }], false)).toMatchObject({
      kind: 'evidence',
      question: 'knotPlace',
    });
  });

  test('learns the side, and whether the needles were struck, before anybody is sent to a knotter', () => {
    fc.assert(
      fc.property(anyJob, fc.boolean(), (answers, live) => {
        const step = nextStep([OPENED, ...answers.filter(({ question }) => question !== 'symptom')], live);
        if (step.kind !== 'check') return;
        const asked = answers.map(({ question }) => question);
        expect(asked).toEqual(expect.arrayContaining(['evidence.whichKnotter', 'evidence.needleSigns']));
      }),
    );
  });
});

/** Evidence that makes a family all but certain. */
const EVIDENCE_FOR: Readonly<Partial<Record<FamilyId, readonly Answer[]>>> = {
  heldStrandLost: [
    OPENED,
    { question: 'evidence.knotPlace', said: 'knot.frontEnd' },
    { question: 'evidence.nextBale', said: 'next.tiesItself' },
    { question: 'evidence.whichKnotter', said: 'which.left' },
    { question: 'evidence.needleSigns', said: 'needles.quiet' },
  ],
  needlesStruck: [
    { question: 'symptom', said: 'symptom.needlesStruck' },
    { question: 'evidence.knotPlace', said: 'knot.topEnd' },
    { question: 'evidence.nextBale', said: 'next.never' },
    { question: 'evidence.endLook', said: 'end.torn' },
    { question: 'evidence.whichKnotter', said: 'which.both' },
    { question: 'evidence.whenItMisses', said: 'when.mostBales' },
    { question: 'evidence.needleSigns', said: 'needles.trouble' },
  ],
};
const held = EVIDENCE_FOR.heldStrandLost ?? [];

describe('the search', () => {
  test('looks before it sends hands in, and says what a check costs and may find', () => {
    const step = nextStep(held, false);
    expect(step).toMatchObject({ kind: 'check', family: 'heldStrandLost', check: 'debris', minutes: 1.5 });
    if (step.kind !== 'check') return;
    const beliefs = beliefsAfter(held);
    expect(step.chanceOfFinding).toBeGreaterThan(0);
    expect(step.chanceOfFinding).toBeLessThan(familyProbability(beliefs, 'heldStrandLost'));
  });

  test('counts the lockout into the first hands-on check only', () => {
    const looked: readonly Answer[] = [
      ...held,
      { question: 'check.heldStrandLost.debris', said: 'finding.clean' },
      { question: 'check.heldStrandLost.holderSpring', said: 'finding.sound' },
      { question: 'check.heldStrandLost.density', said: 'finding.balesSame' },
    ];
    expect(nextStep(looked, false)).toMatchObject({ kind: 'check', check: 'holderPull', minutes: 12 });
    expect(nextStep(looked, true)).toMatchObject({ kind: 'check', check: 'holderPull', minutes: 4 });
  });

  test('names a cause that a check has made clear', () => {
    const found: Answer = { question: 'check.heldStrandLost.holderSpring', said: 'finding.cracked' };
    expect(nextStep([...held, found], false)).toMatchObject({
      kind: 'name',
      family: 'heldStrandLost',
      cause: 'holderSpringCracked',
    });
  });

  test('puts both of a pair of faults right, one after the other, before anything else', () => {
    const faults: readonly QuestionId[] = [
      'check.heldStrandLost.debris',
      'check.heldStrandLost.holderSpring',
    ];
    const answers = [...held];
    const named: string[] = [];
    while (named.length < 2) {
      const step = nextStep(answers, true);
      const question = questionOf(step);
      if (question === undefined) break;
      if (step.kind === 'name') named.push(step.cause);
      answers.push({
        question,
        said: step.kind === 'check' ? shown(step, faults.includes(question)) : 'tie.missed',
      });
    }
    expect(new Set(named)).toEqual(new Set(['debrisPacked', 'holderSpringCracked']));
  });

  test('never names a cause that was put right already', () => {
    fc.assert(
      fc.property(anyJob, fc.boolean(), (answers, live) => {
        const step = nextStep([OPENED, ...answers], live);
        if (step.kind !== 'name') return;
        expect(answers.some(({ question }) => question === repairQuestion(step.family, step.cause))).toBe(
          false,
        );
      }),
    );
  });

  test('leaves a family whose checks found nothing for another, and comes back when that finds nothing', () => {
    const nothingFound = (family: FamilyId): Answer[] =>
      Object.keys(familyById(family).checks).map((check) => ({
        question: checkQuestion(family, check),
        said: shown({ family, check }, false),
      }));
    const torn: readonly Answer[] = [
      { question: 'symptom', said: 'symptom.needleStrandMissed' },
      { question: 'evidence.knotPlace', said: 'knot.topEnd' },
      { question: 'evidence.nextBale', said: 'next.needsHelp' },
      { question: 'evidence.endLook', said: 'end.torn' },
      { question: 'evidence.whichKnotter', said: 'which.left' },
      { question: 'evidence.whenItMisses', said: 'when.ballChange' },
      { question: 'evidence.needleSigns', said: 'needles.quiet' },
    ];
    const start = nextStep(torn, false);
    expect(start).toMatchObject({ kind: 'check' });
    if (start.kind !== 'check') return;
    const after = nextStep([...torn, ...nothingFound(start.family)], false);
    expect(after).toMatchObject({ kind: 'check' });
    expect(after.kind === 'check' && after.family).not.toBe(start.family);
  });

  test('asks once more what nobody was sure of, when nothing else is worth doing, and not a third time', () => {
    const unsure: readonly Answer[] = FAMILIES.flatMap(({ id, checks }) =>
      Object.keys(checks).map((check): Answer => ({ question: checkQuestion(id, check), said: 'notSure' })),
    );
    const step = nextStep([...held, ...unsure], true);
    expect(step).toMatchObject({ kind: 'check', family: 'heldStrandLost' });
    expect(nextStep([...held, ...unsure, ...unsure], true).kind).not.toBe('check');
  });

  test('hands over as something else when every cause was put right in vain', () => {
    const inVain: readonly Answer[] = FAMILIES.flatMap(({ id, causes }) =>
      Object.keys(causes).map(
        (cause): Answer => ({ question: repairQuestion(id, cause), said: 'tie.missed' }),
      ),
    );
    const looked: readonly Answer[] = FAMILIES.flatMap(({ id, checks }) =>
      Object.keys(checks).map((check) => ({
        question: checkQuestion(id, check),
        said: shown({ family: id, check }, false),
      })),
    );
    expect(nextStep([...held, ...inVain, ...looked], true)).toEqual({
      kind: 'handOver',
      reason: 'somethingElseLeads',
    });
  });
});

describe('struck needles', () => {
  test('are looked at before anything else as soon as somebody tells of a bang', () => {
    const told = held.map(
      (answer): Answer =>
        answer.question === 'evidence.needleSigns' ? { ...answer, said: 'needles.trouble' } : answer,
    );
    const unsureOfTheRest: readonly Answer[] = [
      { question: 'symptom', said: 'notSure' },
      { question: 'evidence.knotPlace', said: 'notSure' },
      { question: 'evidence.nextBale', said: 'notSure' },
      { question: 'evidence.endLook', said: 'notSure' },
      { question: 'evidence.whenItMisses', said: 'notSure' },
      ...told.slice(-2),
    ];
    expect(nextStep(unsureOfTheRest, true)).toMatchObject({ kind: 'check', family: 'needlesStruck' });
  });

  const struck = EVIDENCE_FOR.needlesStruck ?? [];

  test('are only looked at, and then referred, whatever is answered', () => {
    fc.assert(
      fc.property(anyPicks, (picks) => {
        const answers = [...struck];
        for (let count = 0; ; count += 1) {
          const step = nextStep(answers, true);
          if (familyProbability(beliefsAfter(answers), 'needlesStruck') < 0.12) return;
          if (step.kind !== 'check' && step.kind !== 'evidence') {
            expect(step).toMatchObject({ kind: 'name', family: 'needlesStruck' });
            if (step.kind !== 'name') return;
            expect(familyById('needlesStruck').causes[step.cause]?.remedy.refer).toBeDefined();
            return;
          }
          if (step.kind === 'check') {
            expect(step.family).toBe('needlesStruck');
            expect(familyById(step.family).checks[step.check]?.reach).toBe('safeStop');
          }
          const question = questionOf(step) ?? 'symptom';
          const said = saidTo(question);
          answers.push({
            question,
            said: said[(picks[count % picks.length] ?? 0) % said.length] ?? 'notSure',
          });
        }
      }),
    );
  });

  test('every cause of theirs is the dealer’s, and every check of theirs is done by eye', () => {
    const { causes, checks } = familyById('needlesStruck');
    for (const { remedy } of Object.values(causes)) {
      expect(remedy.refer).toBeDefined();
      expect(remedy.reach).toBe('safeStop');
    }
    for (const { reach } of Object.values(checks)) expect(reach).toBe('safeStop');
  });
});

test('what tells nothing is recorded and closes the question', () => {
  for (const said of NOTHING_LEARNT) {
    const step = nextStep([...held, { question: 'check.heldStrandLost.debris', said }], false);
    expect(step).toMatchObject({ kind: 'check' });
    expect(step.kind === 'check' && step.check).not.toBe('debris');
  }
});
