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
  /** Nothing a small loudspeaker can radiate lies lower; taking it out leaves the room to what can be heard. */
  highPassHz: 140,
  /** The lift that carries consonants over the low rumble of an engine. */
  presence: { centreHz: 2600, q: 0.8, gainDb: 5 },
  /** Active speech level (ITU-T P.56) of every clip, decibels of full scale. */
  levelDbfs: -15,
  /** Before coding; the coder adds up to a decibel, and -1 must not be passed. */
  peakDbfs: -2.5,
  limiterAttackS: 0.004,
  /** Silence put on both ends before coding, so that the coder's ramps do not touch speech. */
  paddingS: 0.04,
  bitrateKbps: 32,
} as const;
