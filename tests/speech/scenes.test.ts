import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SpeechDetector } from '../../audio/ears/speech-detector.ts';
import { seededRandom } from '../../flows/drill/seeded.ts';
import { inShed, sheds } from './echo.ts';
import { rms } from './noises/basics.ts';
import { NOISE_NAMES, noises } from './noises/noises.ts';
import { makeScene } from './scenes.ts';
import { sampleRate } from './speak.ts';

const dB = (ratio: number) => 10 * Math.log10(ratio);
const energy = (sound: Float32Array) => sound.reduce((sum, sample) => sum + sample * sample, 0);

/** A second of a whistle, which no noise resembles. */
const whistle = Float32Array.from({ length: sampleRate }, (_, i) =>
  Math.sin((2 * Math.PI * 1000 * i) / sampleRate),
);

describe('a noise', () => {
  it.each(NOISE_NAMES)(
    '%s is the same for the same seed, another for another, and never runs out',
    (name) => {
      const make = (seed: number) => noises[name].make(1.5 * sampleRate, sampleRate, seededRandom(seed));
      const first = make(1);
      expect(make(1)).toEqual(first);
      expect(make(2)).not.toEqual(first);
      expect(first.every(Number.isFinite)).toBe(true);
      const thirds = [0, 0.5, 1].map((second) =>
        rms(first.subarray(second * sampleRate, (second + 0.5) * sampleRate)),
      );
      expect(Math.min(...thirds)).toBeGreaterThan(0.05 * rms(first));
    },
  );
});

describe('a scene', () => {
  it('has speech over noise as asked for, where it says', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('pink' as const, 'wind' as const, 'hail' as const),
        fc.constantFrom(0, 5, 10, 20),
        fc.integer({ min: 0, max: 1e6 }),
        (noise, snrDb, seed) => {
          const { samples, start, end } = makeScene(whistle, { noise, snrDb }, seed);
          // The speech is known, so it can be taken out again: what is left is the noise.
          const inSpeech = samples.subarray(start, end);
          const gain =
            inSpeech.reduce((sum, sample, i) => sum + sample * (whistle[i] as number), 0) / energy(whistle);
          const speechPower = gain ** 2 * rms(whistle) ** 2;
          const left = samples.map((sample, i) => sample - gain * (whistle[i - start] ?? 0));
          expect(Math.abs(dB(speechPower / rms(left) ** 2) - snrDb)).toBeLessThan(0.7);
        },
      ),
      { numRuns: 10 },
    );
  });
});

describe('a recording', () => {
  it('has its own room before and behind it, in which nothing is taken for speech', () => {
    const noise = noises.pink.make(2 * sampleRate, sampleRate, seededRandom(3));
    const voice = Float32Array.from(noise, (sample, i) => {
      const isSpoken = i > 0.6 * sampleRate && i < 1.4 * sampleRate;
      return 0.01 * sample + (isSpoken ? 0.2 * (whistle[i % sampleRate] as number) * Math.sin(i / 900) : 0);
    });
    const { samples, start, end } = makeScene(voice, { noise: 'pink', snrDb: 40 }, 4, true);
    const spoken = rms(samples.subarray(start + 0.6 * sampleRate, start + 1.4 * sampleRate));
    const inVoice = dB(
      (rms(voice.subarray(0, sampleRate / 2)) / rms(voice.subarray(0.6 * sampleRate, 1.4 * sampleRate))) ** 2,
    );
    for (const around of [samples.subarray(0, start), samples.subarray(end)])
      expect(Math.abs(dB((rms(around) / spoken) ** 2) - inVoice)).toBeLessThan(3);
    const detector = new SpeechDetector();
    expect(detector.push(samples.subarray(0, start))).toEqual([]);
    expect(detector.isSpeech).toBe(false);
  });
});

describe('a shed', () => {
  const impulse = new Float32Array(1);
  impulse[0] = 1;

  it.each(Object.entries(sheds))('%s gives the direct sound its share over the tail', (_, shed) => {
    const heard = inShed(impulse, shed, sampleRate, seededRandom(5));
    expect(dB(1 / energy(heard.subarray(1)))).toBeCloseTo(shed.directOverTailDb, 3);
  });

  // The reverberation time by ISO 3382-2: a line through the backward integrated decay, here from -5 to -25 dB.
  // M. R. Schroeder, "New method of measuring reverberation time", J. Acoust. Soc. Am. 37, 1965, 409-412.
  it.each(Object.entries(sheds))('%s dies away as long as it says', (_, shed) => {
    const tail = inShed(impulse, shed, sampleRate, seededRandom(5)).subarray(200);
    let left = 0;
    const decay = Float64Array.from(tail.toReversed(), (sample) => (left += sample * sample)).reverse();
    const when = (level: number) =>
      decay.findIndex((each) => dB(each / (decay[0] as number)) < level) / sampleRate;
    const secondsFor60 = 3 * (when(-25) - when(-5));
    expect(secondsFor60 / shed.decaySeconds).toBeGreaterThan(0.85);
    expect(secondsFor60 / shed.decaySeconds).toBeLessThan(1.15);
  });
});
