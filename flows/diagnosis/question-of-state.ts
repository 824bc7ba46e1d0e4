import { FAMILY_IDS } from '../families/family.ts';
import type { QuestionId } from './answer.ts';
import { EVIDENCE } from './evidence.ts';

/** The question a state asks, from the chart's own name of it; undefined for states that ask something else. */
export function questionOfState(state: string): QuestionId | undefined {
  const [, , group = '', id = ''] = state.split('.');
  if (group === 'triage' && Object.hasOwn(EVIDENCE, id)) return `evidence.${id as keyof typeof EVIDENCE}`;
  const family = FAMILY_IDS.find((name) => name === group);
  return family && id !== 'choosing' ? `check.${family}.${id}` : undefined;
}
