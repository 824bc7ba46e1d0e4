/** Everything that shapes the sound of a clip beside its words. A change here renders every clip again. */
export const VOICE_SETTINGS = {
  /** The female US English voice compiled into the synthesiser: its clear consonants carry best over an engine. */
  voice: 'slt',
  /** Length of a sentence against the voice's own. A little slow: it is followed by ear, in noise, hands busy. */
  sentenceStretch: 1.1,
  /** The same for pieces, which the synthesiser already draws out as if each were the end of a sentence. */
  pieceStretch: 1,
  /** The rate the synthesiser speaks at, samples a second. */
  sampleRateHz: 16_000,
  /**
   * The synthesiser mumbles: three quarters of its power lies under 350 Hz, where engines rumble and small loudspeakers
   * do not sound. These filters give it, on average, the octave levels of a person speaking loudly ("loud" vocal effort
   * in the tables of ANSI S3.5-1997), which is what people do in noise; found by a search over this grid of filters.
   */
  highPassHz: 400,
  chestDip: { centreHz: 210, q: 0.9, gainDb: -4 },
  presenceLift: { centreHz: 1800, q: 0.5, gainDb: 8 },
  /** Active speech level (ITU-T P.56) of every clip, decibels of full scale. */
  levelDbfs: -16,
  /** Before coding; the coder adds up to two decibels, and -1 must not be passed. */
  peakDbfs: -3.5,
  limiterAttackS: 0.004,
  /** Silence put on both ends before coding, so that the coder's ramps do not touch speech. */
  paddingS: 0.04,
  bitrateKbps: 32,
} as const;
