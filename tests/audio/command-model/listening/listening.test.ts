import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectedMean } from '../../../../audio/command-model/listening/expected-mean.ts';
import { Fourier } from '../../../../audio/command-model/listening/fourier.ts';
import { cepstraOf, cepstrumCount, logBandsOf } from '../../../../audio/command-model/listening/mel-bands.ts';
import { padMs, prepareUtterance } from '../../../../audio/command-model/listening/prepare-utterance.ts';
import {
  addSpectrum,
  bandPowersOf,
  frameSamples,
  hopSamples,
  spectrumAt,
} from '../../../../audio/command-model/listening/spectral-frames.ts';
import { meanCepstra } from '../../../../audio/command-model/listening/utterance-mean.ts';
import { seededRandom } from '../../../../flows/drill/seeded.ts';
import { pinkNoise, rms } from '../../../speech/noises/basics.ts';

describe('the Fourier transform', () => {
  it('is the sum that defines it', () => {
    const random = seededRandom(1);
    const input = Float64Array.from({ length: 16 }, () => random() - 0.5);
    const [real, imaginary] = [input.slice(), new Float64Array(16)];
    new Fourier(16).forward(real, imaginary);
    for (let k = 0; k < 16; k++) {
      const at = (turn: (angle: number) => number) =>
        input.reduce((sum, x, n) => sum + x * turn((-2 * Math.PI * k * n) / 16), 0);
      expect(real[k]).toBeCloseTo(at(Math.cos), 10);
      expect(imaginary[k]).toBeCloseTo(at(Math.sin), 10);
    }
  });

  it('undoes itself', () => {
    const random = seededRandom(2);
    const input = Float64Array.from({ length: 512 }, () => random() - 0.5);
    const [real, imaginary] = [input.slice(), new Float64Array(512)];
    const fourier = new Fourier(512);
    fourier.forward(real, imaginary);
    fourier.inverse(real, imaginary);
    input.forEach((x, i) => {
      expect(real[i]).toBeCloseTo(x, 10);
    });
  });

  it('has lengths that are powers of two only', () => {
    expect(() => new Fourier(480)).toThrow(/power of two/);
  });
});

describe('mel bands and cepstra', () => {
  it('come back from each other', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -50, max: 50, noNaN: true }), {
          minLength: cepstrumCount,
          maxLength: cepstrumCount,
        }),
        (cepstra) => {
          cepstraOf(logBandsOf(cepstra)).forEach((value, d) => {
            expect(value).toBeCloseTo(cepstra[d] ?? 0, 6);
          });
        },
      ),
    );
  });
});

const noise = pinkNoise(16_000, seededRandom(3)).map((x) => x * 0.1);

describe('spectral frames', () => {
  it('give the sound back where they all overlap', () => {
    const out = new Float32Array(noise.length);
    for (let at = 0; at + frameSamples <= noise.length; at += hopSamples)
      addSpectrum(spectrumAt(noise, at), out, at);
    for (let i = frameSamples; i < noise.length - frameSamples; i++) {
      expect(Math.abs((out[i] ?? 0) - (noise[i] ?? 0))).toBeLessThan(1e-6);
    }
  });
});

/** A room at `level`, 1 s of a buzz that wanders like a voice from 2 s on, and a second of room again. */
function scene(level: number, gain = 1): { raw: Float32Array; start: number; end: number } {
  const room = pinkNoise(64_000, seededRandom(4));
  const scale = level / rms(room);
  const raw = room.map((sample, i) => {
    const t = i / 16_000;
    const voice = t < 2 || t >= 3 ? 0 : Math.sin(2 * Math.PI * 4 * t) ** 2 * buzz(t);
    return gain * (sample * scale + voice);
  });
  return { raw, start: 32_000, end: 48_000 };
}
const buzz = (t: number) => {
  let sum = 0;
  for (let h = 1; h < 40; h++)
    sum += Math.sin(2 * Math.PI * 120 * h * t + h * Math.sin(2 * Math.PI * 2 * t)) / h;
  return 0.1 * sum;
};

function meanOf(samples: Float32Array, startMs: number, endMs: number): Float64Array {
  const frames: Float64Array[] = [];
  for (let at = startMs * 16; at + frameSamples <= endMs * 16; at += hopSamples) {
    frames.push(bandPowersOf(spectrumAt(samples, at)).map(Math.log));
  }
  return meanCepstra(frames);
}

describe('a prepared utterance', () => {
  it('says where the speech is, with room on both sides', () => {
    const { raw, start, end } = scene(0.001);
    const prepared = prepareUtterance(raw, start, end);
    expect(prepared.speechStartMs).toBe(padMs);
    expect(prepared.speechEndMs - prepared.speechStartMs).toBe(1000);
    expect(prepared.samples.length).toBe(16 * (1000 + 2 * padMs));
  });

  it('has about the mean that the model takes for zero', () => {
    const { raw, start, end } = scene(0.001);
    const prepared = prepareUtterance(raw, start, end);
    const mean = meanOf(prepared.samples, prepared.speechStartMs, prepared.speechEndMs);
    expectedMean.forEach((expected, d) => {
      expect(Math.abs((mean[d] ?? 0) - expected)).toBeLessThan(6);
    });
  });

  it('is the same however loud the microphone is', () => {
    const [quiet, loud] = [scene(0.001, 0.1), scene(0.001, 0.8)].map(({ raw, start, end }) =>
      prepareUtterance(raw, start, end),
    );
    if (!quiet || !loud) throw new Error('no scenes');
    const difference = quiet.samples.map((sample, i) => sample - (loud.samples[i] ?? 0));
    expect(rms(difference)).toBeLessThan(0.01 * rms(loud.samples));
  });

  it('has less of the noise', () => {
    const { raw, start, end } = scene(0.02);
    const prepared = prepareUtterance(raw, start, end);
    const ratio = (samples: Float32Array, speechAt: number) =>
      rms(samples.subarray(speechAt, speechAt + 16_000)) / rms(samples.subarray(0, 0.2 * 16_000));
    const before = ratio(raw.subarray(start - 16 * padMs), 16 * padMs);
    expect(ratio(prepared.samples, 16 * padMs)).toBeGreaterThan(1.5 * before);
  });

  it('survives digital silence and emits none', () => {
    const raw = new Float32Array(32_000);
    const { samples } = prepareUtterance(raw, 8_000, 24_000);
    expect(samples.every(Number.isFinite)).toBe(true);
    expect(rms(samples)).toBeGreaterThan(0);
  });

  it('refuses a stretch without speech', () => {
    expect(() => prepareUtterance(noise, 900, 900)).toThrow(/No speech lies between/);
    expect(() => prepareUtterance(noise, 0, noise.length + 1)).toThrow(RangeError);
  });
});
