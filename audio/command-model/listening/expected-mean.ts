/**
 * The long-term mean of the cepstra that the network takes for zero, and to which every utterance is brought. Any would
 * do as long as both use it; this is what the test voices have at 20 dB under full scale, rounded, so that little
 * has to be changed.
 */
export const expectedMean: readonly number[] = [86, -2.5, 0, 12, -7, -2.5, 1, -6, -2, -0.5, 4, 1, 0.5];
