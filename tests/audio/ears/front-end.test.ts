import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FrontEnd, type SoundBlock } from '../../../audio/ears/front-end.ts';
import { rmsDbfs } from '../../../audio/ears/level.ts';
import { createResampler } from '../../../audio/ears/resample.ts';
import { BLOCK_SAMPLES, EARS_RATE_HZ } from '../../../audio/ears/sound-format.ts';
import { spoken } from '../../speech/speak.ts';
import { type Voice, voices } from '../../speech/voices.ts';
import { blocksOf, mixedAt, scaledTo, seeded, whiteNoise } from './test-sounds.ts';

const SPEECH_RMS = 0.08;
const START = 2 * EARS_RATE_HZ;

const speech = scaledTo(spoken(voices[0] as Voice, 'the twine is through the needle eye'), SPEECH_RMS);
const END = START + speech.length;

/** Two seconds of the room, a sentence in it, the room again. @param snrDb speech over white noise, in decibels */
function roomWithSpeech(snrDb: number): Float32Array {
  const noise = whiteNoise(END + EARS_RATE_HZ, SPEECH_RMS * 10 ** (-snrDb / 20), 5);
  return mixedAt(noise, speech, START);
}

function throughFrontEnd(sound: Float32Array, rateHz = EARS_RATE_HZ, cut = sound.length) {
  const frontEnd = new FrontEnd(rateHz, seeded(1));
  const blocks = blocksOf(sound, cut).flatMap((slice) => frontEnd.push(slice));
  frontEnd.close();
  return { heard: joined(blocks, 'heard'), denoised: joined(blocks, 'denoised') };
}

function joined(blocks: readonly SoundBlock[], which: keyof SoundBlock): Float32Array {
  return Float32Array.from(blocks.flatMap((block) => [...block[which]]));
}

/** By how many samples `later` lags behind `sound`: where their product is largest. */
function lagOf(later: Float32Array, sound: Float32Array): number {
  const most = 60;
  const likeness = Array.from({ length: 2 * most + 1 }, (_, i) => {
    let sum = 0;
    for (let at = START; at < END; at += 1) sum += (sound[at] as number) * (later[at + i - most] ?? 0);
    return sum;
  });
  return likeness.indexOf(Math.max(...likeness)) - most;
}

describe('the front end', () => {
  it('gives the same sound however the microphone cuts it', () => {
    const sound = roomWithSpeech(20).subarray(START, START + EARS_RATE_HZ);
    const whole = throughFrontEnd(sound);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5_000 }), (cut) => {
        expect(throughFrontEnd(sound, EARS_RATE_HZ, cut)).toEqual(whole);
      }),
      { numRuns: 4 },
    );
  });

  it.each([8_000, 16_000, 44_100, 48_000, 96_000])('makes whole blocks at %i Hz', (rateHz) => {
    const { heard, denoised } = throughFrontEnd(whiteNoise(3 * rateHz, 0.01), rateHz);
    expect(heard).toHaveLength(denoised.length);
    expect(heard.length % BLOCK_SAMPLES).toBe(0);
    // A frame and a block may be under way, and the filters' own delay.
    expect(heard.length).toBeGreaterThan(2.8 * EARS_RATE_HZ);
  });

  it.each([16_000, 44_100, 48_000])('holds both sounds at the same moment at %i Hz', (rateHz) => {
    const sound = createResampler(EARS_RATE_HZ, rateHz).push(roomWithSpeech(30));
    const { heard, denoised } = throughFrontEnd(sound, rateHz);
    expect(Math.abs(lagOf(denoised, heard))).toBeLessThanOrEqual(2);
  });

  it('hears as loud as the microphone does', () => {
    const sound = roomWithSpeech(10);
    const { heard } = throughFrontEnd(sound);
    expect(rmsDbfs(heard.subarray(START, END))).toBeCloseTo(rmsDbfs(sound.subarray(START, END)), 0);
  });

  it('takes the noise out and leaves the speech', () => {
    const { denoised } = throughFrontEnd(roomWithSpeech(10));
    const alone = throughFrontEnd(mixedAt(new Float32Array(END + EARS_RATE_HZ), speech, START)).heard;
    const noiseDbfs = 20 * Math.log10(SPEECH_RMS) - 10;
    expect(rmsDbfs(denoised.subarray(EARS_RATE_HZ, START))).toBeLessThan(noiseDbfs - 25);
    expect(
      Math.abs(rmsDbfs(denoised.subarray(START, END)) - rmsDbfs(alone.subarray(START, END))),
    ).toBeLessThan(2);
    // What is no part of the speech is a disturbance: 10 dB under the speech as it was mixed.
    const disturbance = denoised
      .subarray(START, END)
      .map((sample, i) => sample - (alone[START + i] as number));
    expect(rmsDbfs(disturbance)).toBeLessThan(noiseDbfs - 2);
  });

  it('refuses a rate that no microphone has', () => {
    expect(() => new FrontEnd(4_000)).toThrow(RangeError);
  });
});
