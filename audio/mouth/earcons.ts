import { bufferOf } from './sample-buffer.ts';

/**
 * The three sounds that are not speech. They differ by rhythm, so that pitch need not be judged in noise, and none can
 * be taken for an alarm: no more than two pulses, never repeated, quieter than the voice, soft at both ends. Pulse
 * pitch of 150 to 1000 Hz and at least four harmonics between 300 and 4000 Hz are borrowed from IEC 60601-1-8, without
 * a claim to conform: small loudspeakers radiate there and old ears hear there.
 */
export type Earcon = 'listening' | 'heard' | 'notHeard';

interface Pulse {
  readonly startS: number;
  readonly lengthS: number;
  readonly pitchHz: number;
}

const PULSES: Readonly<Record<Earcon, readonly Pulse[]>> = {
  /** One: the floor is yours. */
  listening: [{ startS: 0, lengthS: 0.14, pitchHz: 587 }],
  /** Two quick ones, rising: taken. */
  heard: [
    { startS: 0, lengthS: 0.07, pitchHz: 587 },
    { startS: 0.11, lengthS: 0.07, pitchHz: 784 },
  ],
  /** Short and long, falling: not taken. */
  notHeard: [
    { startS: 0, lengthS: 0.08, pitchHz: 440 },
    { startS: 0.17, lengthS: 0.2, pitchHz: 330 },
  ],
};

/** Harmonics and their strength against the first: all under 4000 Hz. */
const HARMONICS = [1, 0.6, 0.45, 0.35, 0.2] as const;
/** Rise and fall of a pulse, seconds: sudden onsets startle. */
const RAMP_S = 0.015;
/** Loudest sample, decibels of full scale: some 6 decibels under the peaks of the voice. */
const PEAK_DBFS = -10;

/**
 * The samples of an earcon, one channel.
 * @param sampleRateHz samples a second, 8000 or more
 */
export function earconSamples(earcon: Earcon, sampleRateHz: number): Float32Array<ArrayBuffer> {
  const pulses = PULSES[earcon];
  const lengthS = Math.max(...pulses.map((pulse) => pulse.startS + pulse.lengthS));
  const samples = new Float32Array(Math.round(lengthS * sampleRateHz));
  for (const { startS, lengthS: pulseS, pitchHz } of pulses) {
    const first = Math.round(startS * sampleRateHz);
    const count = Math.min(Math.round(pulseS * sampleRateHz), samples.length - first);
    for (let at = 0; at < count; at++) {
      samples[first + at] =
        rampAt(at / sampleRateHz, count / sampleRateHz) * toneAt(at / sampleRateHz, pitchHz);
    }
  }
  const loudest = samples.reduce((peak, sample) => Math.max(peak, Math.abs(sample)), 0);
  return samples.map((sample) => (sample / loudest) * 10 ** (PEAK_DBFS / 20));
}

/** Earcons as they were last made, by context: a press is not to wait for a synthesis. */
const MADE = new WeakMap<AudioContext, Map<Earcon, AudioBuffer>>();

function earconBuffer(context: AudioContext, earcon: Earcon): AudioBuffer {
  const made = MADE.get(context) ?? new Map<Earcon, AudioBuffer>();
  MADE.set(context, made);
  const buffer =
    made.get(earcon) ?? bufferOf(context, earconSamples(earcon, context.sampleRate), context.sampleRate);
  made.set(earcon, buffer);
  return buffer;
}

/** Makes every earcon ready to play at once. */
export function prepareEarcons(context: AudioContext): void {
  for (const earcon of Object.keys(PULSES) as Earcon[]) earconBuffer(context, earcon);
}

/** Plays an earcon. Resolves when it has sounded; at once if the context gives no sound. */
export async function playEarcon(context: AudioContext, output: AudioNode, earcon: Earcon): Promise<void> {
  if (context.state !== 'running') return;
  const source = context.createBufferSource();
  source.buffer = earconBuffer(context, earcon);
  source.connect(output);
  await new Promise<void>((resolve) => {
    source.addEventListener('ended', () => resolve());
    context.addEventListener('statechange', () => context.state !== 'running' && resolve(), { once: true });
    source.start();
  });
}

function toneAt(timeS: number, pitchHz: number): number {
  return HARMONICS.reduce(
    (sum, strength, index) => sum + strength * Math.sin(2 * Math.PI * pitchHz * (index + 1) * timeS),
    0,
  );
}

/** Raised cosine from silence to full and back. */
function rampAt(timeS: number, lengthS: number): number {
  const fromEdge = Math.min(timeS, lengthS - timeS, RAMP_S);
  return 0.5 - 0.5 * Math.cos((Math.PI * Math.max(0, fromEdge)) / RAMP_S);
}
