import { checkQuestion } from '../diagnosis/answer.ts';
import { sayWhyThatOne } from '../diagnosis/why-that-one.ts';
import { atSafeStop, behindLockout, duringHandTurn } from '../gates.ts';
import { jobSetup, stepName } from '../job-setup.ts';
import { LINES } from '../lines.ts';
import { machineBandFor } from '../machine-values.ts';
import { sayOwnBand } from '../own-band-said.ts';
import { sayPending, saySpan } from '../sayings.ts';
import type { Check, Family } from './family.ts';

type State = Parameters<typeof jobSetup.createStateConfig>[0];

/**
 * A family's chart: one state a check, each behind the gate its reach calls for. Which check comes next is
 * decided by the beliefs; after an answer the job decides again, and may leave the family for another.
 */
export function familyChart(family: Family): State {
  const checks = Object.entries(family.checks);
  return jobSetup.createStateConfig({
    id: family.id,
    initial: 'choosing',
    entry: { type: 'tellFamily', params: { family: family.id } },
    states: {
      choosing: {
        always: checks.map(([check, { reach }]) => ({
          guard: {
            type: 'nextIs' as const,
            params: {
              step: stepName({ kind: 'check', family: family.id, check, chanceOfFinding: 0, minutes: 0 }),
            },
          },
          target: reach === 'handTurn' ? `${check}Prepared` : check,
        })),
      },
      ...Object.fromEntries(checks.flatMap(([id, check]) => checkStates(family, id, check))),
    },
  });
}

/** A check turned by hand is prepared under the lockout first, so that nothing is marked while things may move. */
function checkStates(family: Family, id: string, check: Check): [string, State][] {
  switch (check.reach) {
    case 'safeStop':
      return [[id, atSafeStop(asking(family, id, check, check.prepare ?? []))]];
    case 'lockout':
      return [[id, behindLockout(asking(family, id, check, check.prepare ?? []))]];
    case 'handTurn':
      return [
        [`${id}Prepared`, behindLockout(preparing(family, id, check))],
        [id, duringHandTurn(asking(family, id, check, []))],
      ];
  }
}

/** The question itself: an answer leads on, a number is read back and accepted first. */
function asking(family: Family, id: string, check: Check, before: readonly string[]): State {
  const question = checkQuestion(family.id, id);
  const ref = { family: family.id, check: id };
  const record = {
    target: '#deciding',
    actions: ['echo', { type: 'recordAnswer', params: { question } }],
  } as const;
  const meanings = check.answers.map(({ meaning }) => meaning);
  return jobSetup.createStateConfig({
    initial: 'asking',
    states: {
      asking: {
        meta: {
          say: () => [...before, check.ask],
          brief: () => [check.ask],
          why: ({ next, ownBands }) => [
            check.why,
            ...sayWhyThatOne(next),
            ...sayOwnBand(machineBandFor(ref, ownBands)),
            ...(check.measure ? [check.measure.typically, LINES.checkManual] : []),
          ],
          look: check.look,
          expecting: {
            meanings,
            ...(check.measure
              ? { value: { kind: 'measurement', dimension: check.measure.dimension } as const }
              : {}),
          },
          ...(check.measure ? { span: [LINES.shouldBe, ...saySpan(check.measure.plausible)] } : {}),
        },
        on: {
          ...Object.fromEntries(meanings.map((meaning) => [meaning, record])),
          notSure: record,
          cannotSee: record,
          skip: record,
          goBack: withdraw,
          ...(check.measure
            ? {
                'value.measured': [
                  { guard: { type: 'plausible', params: ref }, target: 'accepting', actions: 'holdValue' },
                  { actions: { type: 'questionValue', params: ref } },
                ],
              }
            : {}),
        },
      },
      ...(check.measure
        ? {
            accepting: {
              meta: {
                say: sayPending,
                why: () => [LINES.acceptWhy],
                look: check.look,
                expecting: { meanings: ['yes', 'no'] },
              },
              on: {
                yes: { target: '#deciding', actions: { type: 'recordMeasured', params: ref } },
                no: { target: 'asking', actions: 'echo' },
                goBack: { target: 'asking', actions: 'echo' },
              },
            },
          }
        : {}),
    },
  } as State);
}

function preparing(family: Family, id: string, check: Check): State {
  const question = checkQuestion(family.id, id);
  const record = {
    target: '#deciding',
    actions: ['echo', { type: 'recordAnswer', params: { question } }],
  } as const;
  return jobSetup.createStateConfig({
    meta: {
      say: () => check.prepare ?? [],
      why: () => [LINES.prepareWhy],
      look: check.look,
      expecting: { meanings: ['thatIsDone'] },
    },
    on: {
      thatIsDone: { target: `#${family.id}.${id}`, actions: 'echo' },
      notSure: record,
      cannotSee: record,
      skip: record,
      goBack: withdraw,
    },
  });
}

const withdraw = { target: '#deciding', actions: ['echo', 'withdrawAnswer'] } as const;
