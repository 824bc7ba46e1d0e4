import { SYMPTOM_MEANINGS } from '../grammar/lexicon.ts';
import { evidenceQuestion } from './diagnosis/answer.ts';
import { EVIDENCE, type EvidenceId, type EvidenceQuestion } from './diagnosis/evidence.ts';
import { sayWhyThatOne } from './diagnosis/why-that-one.ts';
import { FAMILIES } from './families/all.ts';
import { familyChart } from './families/family-chart.ts';
import { atSafeStop, behindLockout } from './gates.ts';
import { NEW_JOB } from './job-context.ts';
import { jobSetup, stepName } from './job-setup.ts';
import { LINES } from './lines.ts';
import { safety } from './lockout/chart.ts';
import { proving } from './proving.ts';
import { sayOutcome } from './recollection.ts';
import { sayAlongside, sayHandOver, sayRemedyStep, sayRemedyWhy } from './sayings.ts';

type State = Parameters<typeof jobSetup.createStateConfig>[0];

/**
 * One job: whether anybody may be at the machine, beside what is asked and done there.
 *
 * The inquiry opens with the person's own words, asks for evidence, searches one family, puts one cause right
 * and proves it by counted ties. It waits at its gates until the safety region admits eyes, hands or power.
 */
export const jobMachine = jobSetup.createMachine({
  id: 'job',
  type: 'parallel',
  context: NEW_JOB,
  states: {
    safety,
    inquiry: {
      initial: 'opening',
      on: {
        handOver: {
          target: '.handedOver',
          actions: ['echo', { type: 'recordHandOver', params: { reason: 'asked' } }],
        },
      },
      states: {
        opening: {
          entry: { type: 'need', params: { need: 'nothing' } },
          meta: {
            say: () => [LINES.opening],
            why: () => [LINES.openingWhy],
            look: 'bale',
            expecting: { meanings: SYMPTOM_MEANINGS },
          },
          on: {
            'symptom.*': { target: 'deciding', actions: ['echo', 'recordSymptom'] },
            notSure: { target: 'deciding', actions: ['echo', 'recordSymptom'] },
            'estimates.taken': { actions: 'takeEstimates' },
            'machine.known': { actions: 'takeMachine' },
          },
        },

        deciding: {
          id: 'deciding',
          entry: 'decide',
          always: [
            { guard: { type: 'nextIs', params: { step: 'open' } }, target: 'opening' },
            ...evidenceIds().map((id) => ({
              guard: {
                type: 'nextIs' as const,
                params: { step: stepName({ kind: 'evidence', question: id, gainBits: 0 }) },
              },
              target: `triage.${id}`,
            })),
            ...FAMILIES.map(({ id }) => ({
              guard: { type: 'nextIsIn' as const, params: { family: id } },
              target: id,
            })),
            { guard: { type: 'nextIs', params: { step: 'name' } }, target: 'naming' },
            { target: 'handedOver', actions: { type: 'recordHandOver', params: {} } },
          ],
        },

        triage: {
          initial: 'knotPlace',
          states: Object.fromEntries(evidenceIds().map((id) => [id, atSafeStop(evidenceState(id))])),
        },

        ...Object.fromEntries(FAMILIES.map((family) => [family.id, familyChart(family)])),

        naming: {
          entry: 'beginRemedy',
          always: [
            {
              guard: 'causeReferred',
              target: 'handedOver',
              actions: { type: 'recordHandOver', params: { reason: 'referred' } },
            },
            { guard: 'remedyAtLockout', target: 'remedy.atLockout' },
            { target: 'remedy.atSafeStop' },
          ],
        },

        remedy: {
          id: 'remedy',
          initial: 'atLockout',
          states: { atLockout: behindLockout(remedyStep()), atSafeStop: atSafeStop(remedyStep()) },
        },

        /** Faults come in pairs: short work that is likely needed too is offered before ties are counted. */
        alongside: {
          id: 'alongside',
          always: { guard: 'nothingRidesAlong', target: 'proving' },
          meta: {
            say: sayAlongside,
            why: () => [LINES.alongsideWhy],
            look: 'knotterFrame',
            expecting: { meanings: ['yes', 'no'] },
          },
          on: {
            yes: { target: 'naming', actions: ['echo', 'takeAlong'] },
            no: { target: 'proving', actions: 'echo' },
          },
        },

        proving,

        handedOver: {
          entry: { type: 'need', params: { need: 'nothing' } },
          meta: {
            say: (context) => [...sayHandOver(context), LINES.handOver, LINES.handOverAsk],
            why: (context) => sayHandOver(context),
            look: 'failedString',
            expecting: { meanings: [] },
          },
          on: { handOver: {} },
        },

        closed: {
          id: 'closed',
          entry: { type: 'need', params: { need: 'nothing' } },
          meta: {
            say: (context) => [...sayOutcome(context), LINES.closed],
            look: 'bale',
            expecting: { meanings: [] },
          },
          on: { handOver: {} },
        },
      },
    },
  },
});

function evidenceState(id: EvidenceId): State {
  const question: EvidenceQuestion = EVIDENCE[id];
  const meanings = question.answers.flatMap((answer) => answer.meanings);
  const record = {
    target: '#deciding',
    actions: ['echo', { type: 'recordAnswer', params: { question: evidenceQuestion(id) } }],
  } as const;
  return jobSetup.createStateConfig({
    meta: {
      say: () => [question.ask],
      why: ({ next }) => [question.why, ...sayWhyThatOne(next)],
      look: question.look,
      expecting: { meanings },
    },
    on: {
      ...Object.fromEntries(meanings.map((meaning) => [meaning, record])),
      notSure: record,
      cannotSee: record,
      skip: record,
      goBack: { target: '#deciding', actions: ['echo', 'withdrawAnswer'] },
    },
  } as State);
}

/** One instruction of the remedy at a time, each answered by "that job is done". */
function remedyStep(): State {
  return jobSetup.createStateConfig({
    meta: {
      say: sayRemedyStep,
      why: sayRemedyWhy,
      look: 'knotterFrame',
      expecting: { meanings: ['thatIsDone', 'skip'] },
    },
    on: {
      thatIsDone: [
        { guard: 'moreRemedySteps', actions: ['echo', 'nextRemedyStep'] },
        { target: '#alongside', actions: ['echo', 'recordRepair'] },
      ],
      skip: { target: '#deciding', actions: ['echo', 'setRemedyAside'] },
      goBack: [
        { guard: 'pastFirstRemedyStep', actions: ['echo', 'previousRemedyStep'] },
        { target: '#deciding', actions: ['echo', 'withdrawAnswer'] },
      ],
    },
  });
}

function evidenceIds(): EvidenceId[] {
  return Object.keys(EVIDENCE) as EvidenceId[];
}
