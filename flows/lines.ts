/**
 * Every fixed sentence the charts speak that does not belong to a step, a check or a cause. Each has one recorded
 * clip, so nothing is spoken that is not written down here or beside its data.
 */
export const LINES = {
  opening: 'What is the knotter doing?',
  openingWhy: 'Your own words tell me where to start.',

  voidedAsk: 'Hands out of the machine. Start over when it is safe.',
  voidedWhy: 'Something changed, so nothing I was told about the machine counts any more.',
  voided: 'Lockout is off.',
  safeStopReached: 'The machine is at a safe stop. Eyes only. Keep your hands out.',
  lockoutLive: 'The machine is locked out. Tell me at once if anything changes.',

  turnByHand:
    'Trip the clutch with its lever, standing outside the needles. Turn the flywheel by its rim, slowly, the way it runs.',
  finishCycle: 'Turn the flywheel by its rim, slowly, the way it runs.',
  handsOnRim: 'Hands nowhere else. Bring the cycle all the way home.',
  turnBrief: 'Bring the cycle all the way home. Hands on the rim only.',
  turnWhy: 'A cycle left half way finishes by itself the moment something turns.',

  acceptValue: 'Is that right?',
  acceptWhy: 'A number goes into the record only after you have heard it back.',
  sayItClearer: 'I need to hear that more clearly. Say it again, or press the button.',
  confirmByButton: 'It is too loud to confirm by voice. Press the button.',
  implausible: 'That is outside what I expect here. It should be',
  shouldBe: 'It should be',
  sayItAgain: 'Say it again.',
  noMissesBefore: 'With no miss before, there is nothing to prove. Count again.',
  nothingToGoBackTo: 'There is nothing to go back to here.',
  repairFailed: 'That was not it, or not all of it. We go on looking.',
  checkManual: 'Check the manual of your machine.',
  ownBand: 'What you entered for this baler goes first:',
  ownLimit: 'The limit you entered for this baler goes first:',
  upTo: 'up to',

  prepareWhy: 'This has to be done while nothing can move.',

  alongside: 'One more thing is quick while you are here.',
  alongsideAsk: 'Shall we do that as well?',
  alongsideWhy: 'Faults come in pairs, and one count of ties can prove both.',

  missRate: 'Before the repair, how many bales missed, out of how many? Say it like this: two out of ten.',
  missRateWhy: 'The rarer the miss was, the more clean ties it takes to prove it is gone.',
  proofNeeds: 'To prove it, this side has to tie',
  proofInARow: 'in a row, without a miss.',
  proofNotCounting: 'The first tie after threading does not count.',
  count: 'Tell me each tie: good tie, or missed.',
  countOf: 'of',
  proofClean: 'Clean ties in a row:',
  proofClaim: 'I am ninety-five percent sure it now misses fewer than one bale in',
  closeJob: 'Shall I close the job?',
  closeWhy: 'A closed job keeps its record. A new miss is a new job.',
  parked: 'The job is kept. Come back to it when you are ready to count.',

  referred: 'This is work for the dealer or a licensed technician.',
  nothingLeftToCheck: 'Everything I know to check has been checked.',
  somethingElseLeads: 'What you found fits nothing on my list.',
  asked: 'You asked to hand over.',
  excluded: 'Causes excluded so far:',
  handOver: 'I stop here, and hand over with everything you found.',
  handOverAsk: 'Keep the failed string with both its ends. Leave the machine as it is.',
  closed: 'The job is closed, and the record is kept.',

  sure: 'sure.',
  iAm: 'I am',
} as const;
