import { ASIDE_LINES, lookAtLine, sayStation } from './asides.ts';
import { EVIDENCE, type EvidenceQuestion } from './diagnosis/evidence.ts';
import { whyThatOneInventory } from './diagnosis/why-that-one.ts';
import { drillInventory } from './drill/narrate.ts';
import { FAMILIES } from './families/all.ts';
import { INPUT_IDS, inputOf } from './figures-asked/inputs.ts';
import { FIGURE_LINES } from './figures-asked/lines.ts';
import { hearingInventory } from './hearing-policy.ts';
import type { PartId } from './knotter.ts';
import { PARTS } from './knotter.ts';
import { LINES } from './lines.ts';
import {
  HAND_TURN_STEPS,
  LOCKOUT_STEPS,
  type ProcedureStep,
  READY_STEPS,
  RELEASE_STEPS,
  SAFE_STOP_STEPS,
} from './lockout/steps.ts';
import { COUNT_LINES } from './miss-log/saying.ts';
import { placeLine, RECALL_LINES } from './recollection.ts';
import { causeLine, looksLikeLine, SYSTEM_VOID_LINES } from './sayings.ts';
import { STATIONS } from './tying-cycle.ts';

/**
 * Every fixed sentence the charts can speak. Each needs a recorded clip, so whatever a chart says and this list
 * lacks is a failing test, not a silence under the machine.
 */
export function spokenByFlows(): readonly string[] {
  const steps: readonly ProcedureStep[] = [
    ...SAFE_STOP_STEPS,
    ...LOCKOUT_STEPS,
    ...HAND_TURN_STEPS,
    ...READY_STEPS,
    ...RELEASE_STEPS,
  ];
  const questions: readonly EvidenceQuestion[] = Object.values(EVIDENCE);
  return [
    ...Object.values(LINES),
    ...hearingInventory(),
    ...Object.values(ASIDE_LINES),
    ...Object.values(FIGURE_LINES),
    ...Object.values(COUNT_LINES),
    ...Object.values(RECALL_LINES).flatMap((line) =>
      typeof line === 'string' ? [line] : Object.values(line),
    ),
    ...(Object.keys(PARTS) as PartId[]).map(placeLine),
    ...INPUT_IDS.map(inputOf).flatMap(({ name, ask }) => [name, ask]),
    ...Object.values(SYSTEM_VOID_LINES),
    ...whyThatOneInventory(),
    ...STATIONS.flatMap(sayStation),
    ...drillInventory(),
    ...(Object.keys(PARTS) as PartId[]).map(lookAtLine),
    ...steps.flatMap(({ instruct, brief, why }) => [instruct, brief, why]),
    ...questions.flatMap(({ ask, why }) => [ask, why]),
    ...FAMILIES.flatMap((family) => [
      looksLikeLine(family.id),
      ...Object.entries(family.causes).flatMap(([cause, { remedy }]) => [
        causeLine(family.id, cause),
        ...remedy.steps,
        ...(remedy.refer ? [remedy.refer] : []),
      ]),
      ...Object.values(family.checks).flatMap(({ prepare, ask, why, measure }) => [
        ...(prepare ?? []),
        ask,
        why,
        ...(measure ? [measure.typically] : []),
      ]),
    ]),
  ];
}
