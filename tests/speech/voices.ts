/** Who speaks the clips. */

/** Voices that settings were chosen with say nothing about voices that nobody has met yet. */
export type Use = 'tuning' | 'judging';

export interface Voice {
  readonly name: string;
  readonly use: Use;
  readonly engine: 'flite' | 'festival' | 'espeak';
  /** The engine's own name for it. */
  readonly id: string;
  /** How fast it speaks, 1 as the engine does. */
  readonly tempo?: number;
  /** Its spectrum and pitch are scaled by this: over 1 is a smaller speaker. */
  readonly pitch?: number;
}

/**
 * Flite's and Festival's are built from recordings of people (diphone, cluster-unit and statistical), all at least
 * 16 kHz. Espeak's are formant synthesis, harder for any recogniser of people.
 */
export const voices: readonly Voice[] = [
  { name: 'flite-kal16', use: 'tuning', engine: 'flite', id: 'kal16' },
  { name: 'flite-awb', use: 'tuning', engine: 'flite', id: 'awb' },
  { name: 'flite-rms', use: 'tuning', engine: 'flite', id: 'rms' },
  { name: 'flite-slt', use: 'tuning', engine: 'flite', id: 'slt' },
  { name: 'festival-kal', use: 'tuning', engine: 'festival', id: 'voice_kal_diphone' },
  { name: 'festival-ked', use: 'tuning', engine: 'festival', id: 'voice_ked_diphone' },
  { name: 'festival-slt', use: 'tuning', engine: 'festival', id: 'voice_cmu_us_slt_arctic_hts' },
  { name: 'espeak-m3', use: 'tuning', engine: 'espeak', id: 'en-us+m3' },
  { name: 'espeak-f2', use: 'tuning', engine: 'espeak', id: 'en-us+f2', tempo: 0.9 },
  { name: 'rms-small-fast', use: 'judging', engine: 'flite', id: 'rms', pitch: 1.1, tempo: 1.12 },
  { name: 'rms-big-slow', use: 'judging', engine: 'flite', id: 'rms', pitch: 0.93, tempo: 0.88 },
  { name: 'slt-small', use: 'judging', engine: 'flite', id: 'slt', pitch: 1.07, tempo: 1.06 },
  { name: 'slt-big-slow', use: 'judging', engine: 'flite', id: 'slt', pitch: 0.9, tempo: 0.9 },
  { name: 'awb-small-slow', use: 'judging', engine: 'flite', id: 'awb', pitch: 1.08, tempo: 0.92 },
  {
    name: 'ked-big-fast',
    use: 'judging',
    engine: 'festival',
    id: 'voice_ked_diphone',
    pitch: 0.94,
    tempo: 1.1,
  },
  { name: 'espeak-m7', use: 'judging', engine: 'espeak', id: 'en-us+m7' },
  { name: 'espeak-f4', use: 'judging', engine: 'espeak', id: 'en-us+f4', tempo: 0.95 },
  { name: 'espeak-nyc', use: 'judging', engine: 'espeak', id: 'en-us-nyc+m1', tempo: 1.1 },
];

export function voicesFor(use: Use): readonly Voice[] {
  return voices.filter((voice) => voice.use === use);
}
