/**
 * Words the pronouncing dictionary lacks, or says differently from a field: ARPAbet without stress,
 * one entry a way of saying it. Written by ear; common practice, no source.
 */
export const pronunciations: Readonly<Record<string, readonly string[]>> = {
  billhook: ['B IH L HH UH K'],
  chocked: ['CH AA K T'],
  grooved: ['G R UW V D'],
  kink: ['K IH NG K'],
  kinked: ['K IH NG K T'],
  knotter: ['N AA T ER'],
  knotters: ['N AA T ER Z'],
  newtons: ['N UW T AH N Z'],
  pawl: ['P AO L'],
  rethread: ['R IY TH R EH D'],
  "tablet's": ['T AE B L AH T S'],
  // The small unit, not the old pronoun.
  thou: ['TH AW'],
  thirtysecond: ['TH ER T IY S EH K AH N D', 'TH ER D IY S EH K AH N D'],
  thirtyseconds: ['TH ER T IY S EH K AH N D Z', 'TH ER D IY S EH K AH N D Z'],
  unthreaded: ['AH N TH R EH D AH D', 'AH N TH R EH D IH D'],
  wobbles: ['W AA B AH L Z'],
};
