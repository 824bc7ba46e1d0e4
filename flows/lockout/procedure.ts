import { jobSetup } from '../job-setup.ts';
import type { ProcedureStep } from './steps.ts';

type State = Parameters<typeof jobSetup.createStateConfig>[0];

/**
 * A state a step, in order. Only the step's own phrase, clearly heard, leads on; "go back one" leads back.
 * @param done where the last step leads
 * @param list whether the steps have to hold from here on, so that the list of them is kept and shown
 */
export function procedure(
  steps: readonly ProcedureStep[],
  done: string,
  list: 'kept' | 'passing',
): Record<string, State> {
  return Object.fromEntries(
    steps.map((step, index) => {
      const before = steps[index - 1];
      const keep = list === 'kept' ? [{ type: 'confirmStep' as const, params: { step: step.id } }] : [];
      return [
        step.id,
        jobSetup.createStateConfig({
          meta: {
            say: ({ knownSteps }) => [knownSteps.includes(step.id) ? step.brief : step.instruct],
            brief: () => [step.brief],
            why: () => [step.why],
            look: step.look,
            expecting: { meanings: [step.confirmedBy] },
          },
          entry: reopen(steps.slice(index)),
          on: {
            [step.confirmedBy]: [
              { guard: 'heardClearly', target: steps[index + 1]?.id ?? done, actions: ['echo', ...keep] },
              { actions: 'askForClearerVoice' },
            ],
            goBack: before ? { target: before.id, actions: 'echo' } : { actions: 'sayNothingToGoBackTo' },
          },
        }),
      ];
    }),
  );
}

/** Steps that are asked for again do not hold any more. */
export function reopen(steps: readonly ProcedureStep[]) {
  return { type: 'reopenSteps', params: { steps: steps.map(({ id }) => id) } } as const;
}
