import { type PlayedMachine, symptomTold } from './finding.ts';
import { type DrillSetup, hiddenFault, LARGEST_SEED } from './hidden-fault.ts';
import { policyPath } from './path.ts';

/** Findings are dealt so often for one fault; then another fault is drawn. */
const DEALS_A_FAULT = 10;
/** More than any drill of the tables needs. */
const MOST_DEALS = 20 * DEALS_A_FAULT;

/**
 * The machine of a drill, whose findings lead to what is hidden. By the tables a fault may show so little of itself that
 * nobody could find it: such findings are dealt anew, and a fault that none of them lead to makes way for another.
 * @throws Error where no deal leads to its fault, which the tests rule out
 */
export function dealtMachine(setup: DrillSetup): PlayedMachine {
  const { seed, level } = setup;
  for (let deal = 0; deal < MOST_DEALS; deal += 1) {
    const hidden = hiddenFault({ level, seed: beyond(seed, deal - (deal % DEALS_A_FAULT)) });
    const machine = { setup, hidden, dealtBy: beyond(seed, deal) };
    if (policyPath(machine, symptomTold(machine)).end !== 'handedOver') return machine;
  }
  throw new Error(`No findings of drill ${seed} at level ${level} lead to its fault.`);
}

/** A number past those that trainers give, so that no deal is another drill's. */
function beyond(seed: number, deal: number): number {
  return seed + deal * (LARGEST_SEED + 1);
}
