import { chanceRepairChangedNothing } from '../../flows/figures/before-after.ts';
import { upperBoundAfterClean } from '../../flows/figures/clean-ties.ts';
import { missRateInterval } from '../../flows/figures/miss-rate.ts';
import type { Proof, Repair } from '../../flows/job-context.ts';
import { PROOF_CONFIDENCE } from '../../flows/job-setup.ts';
import type { BeforeRepair, ProofLine } from './card.ts';
import { percentText } from './words.ts';

/** What a proof says so far, in numbers and in words. */
export function proofLine(proof: Proof, outcome: Repair['outcome']): ProofLine {
  const { clean, needed } = proof;
  const isClean = clean > 0 && outcome !== 'stillMisses';
  const atMost = isClean ? upperBoundAfterClean(clean, PROOF_CONFIDENCE) : undefined;
  return {
    before: beforeRepair(proof),
    needed,
    clean,
    confidence: PROOF_CONFIDENCE,
    ...(atMost === undefined ? {} : { atMost }),
    ...chanceOfNoChange(proof, outcome),
    claim: claimOf(clean, needed, outcome, atMost),
  };
}

function chanceOfNoChange(
  { before, clean }: Proof,
  outcome: Repair['outcome'],
): Pick<ProofLine, 'chanceOfNoChange'> {
  if (!before || clean === 0 || outcome === 'stillMisses') return {};
  return {
    chanceOfNoChange: chanceRepairChangedNothing(
      { misses: before.misses, ties: before.bales },
      { misses: 0, ties: clean },
    ),
  };
}

function beforeRepair({ before, missRateBefore }: Proof): BeforeRepair {
  if (!before) return { counted: false, rate: missRateBefore };
  const { misses, bales: ties } = before;
  return {
    counted: true,
    misses,
    ties,
    rate: missRateBefore,
    ...missRateInterval(misses, ties, PROOF_CONFIDENCE),
  };
}

function claimOf(clean: number, needed: number, outcome: Repair['outcome'], atMost?: number): string {
  if (outcome === 'stillMisses') {
    return `Not repaired: it missed again ${clean === 0 ? 'at the first tie' : `after ${ties(clean)}`}.`;
  }
  if (atMost === undefined) return `Nothing is proved yet: no tie was counted. It takes ${needed} in a row.`;
  const claim = `After ${ties(clean)} in a row without a miss it is ${percentText(PROOF_CONFIDENCE)} sure that it now misses fewer than one bale in ${Math.floor(1 / atMost)}.`;
  return clean < needed ? `Not proved yet, ${needed - clean} to go. ${claim}` : claim;
}

function ties(count: number): string {
  return count === 1 ? '1 good tie' : `${count} good ties`;
}
