import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LevelMeter, rmsDbfs, SILENCE_DBFS, snrDb } from '../../../audio/ears/level.ts';
import { blocksOf, sine, voiceLike, whiteNoise } from './test-sounds.ts';

describe('loudness', () => {
  // The root mean square of a sine is its peak over the root of two: 20 log10(1/sqrt 2) = -3.0103 dB.
  it('reads -3.01 dBFS for a full-scale sine', () => {
    expect(rmsDbfs(sine(16_000, 1_000))).toBeCloseTo(-3.0103, 3);
  });

  it('reads 6.02 dB less for half the amplitude', () => {
    expect(rmsDbfs(sine(16_000, 1_000, 16_000, 0.5))).toBeCloseTo(-3.0103 - 6.0206, 3);
  });

  it('reads the bottom of its scale for silence and for nothing', () => {
    expect(rmsDbfs(new Float32Array(100))).toBe(SILENCE_DBFS);
    expect(rmsDbfs(new Float32Array(0))).toBe(SILENCE_DBFS);
  });
});

describe('signal to noise', () => {
  it('takes the noise out of the mixture: equal powers together read 3 dB more and are a ratio of 0 dB', () => {
    expect(snrDb(-20 + 10 * Math.log10(2), -20)).toBeCloseTo(0, 6);
    expect(snrDb(-20 + 10 * Math.log10(11), -20)).toBeCloseTo(10, 6);
  });

  it('is finite and rises with the speech, whatever the levels', () => {
    const level = fc.double({ min: -100, max: 0, noNaN: true });
    fc.assert(
      fc.property(level, level, level, (a, b, noise) => {
        const [quieter, louder] = a < b ? [a, b] : [b, a];
        expect(Number.isFinite(snrDb(quieter, noise))).toBe(true);
        expect(snrDb(louder, noise)).toBeGreaterThanOrEqual(snrDb(quieter, noise));
      }),
    );
  });
});

describe('the level meter', () => {
  it.each([25, 15, 8])('finds a ratio of %d dB within 1.5 dB once the voice was understood', (trueDb) => {
    const meter = new LevelMeter();
    const noiseRms = 0.005;
    const noise = whiteNoise(16_000 * 6, noiseRms);
    for (const block of blocksOf(noise.subarray(0, 48_000), 1_600)) meter.take(block);
    const speech = voiceLike(3_000, noiseRms * 10 ** (trueDb / 20));
    const mixed = noise.subarray(48_000).map((sample, i) => sample + (speech[i] as number));
    for (const block of blocksOf(mixed, 1_600)) meter.take(block);
    meter.takeVoice(rmsDbfs(mixed));
    const { snrDb: foundDb } = meter.take(noise.subarray(0, 1_600));
    expect(Math.abs(foundDb - trueDb)).toBeLessThan(1.5);
  });

  it('keeps its floor while somebody speaks, and follows when the engine starts', () => {
    const meter = new LevelMeter();
    for (const block of blocksOf(whiteNoise(48_000, 0.001), 1_600)) meter.take(block);
    for (const block of blocksOf(voiceLike(2_000, 0.1), 1_600)) meter.take(block);
    expect(meter.floorDbfs).toBeCloseTo(-60, 0);
    for (const block of blocksOf(whiteNoise(16_000 * 5, 0.03), 1_600)) meter.take(block);
    expect(meter.floorDbfs).toBeCloseTo(20 * Math.log10(0.03), 0);
  });

  it('is not moved by one shout or one mumble among three utterances', () => {
    const meter = new LevelMeter();
    for (const block of blocksOf(whiteNoise(48_000, 0.001), 1_600)) meter.take(block);
    const ratioNow = () => meter.take(whiteNoise(1_600, 0.001)).snrDb;
    for (const dbfs of [-30, -30, -5]) meter.takeVoice(dbfs);
    expect(ratioNow()).toBeCloseTo(30, 0);
    for (const dbfs of [-30, -55]) meter.takeVoice(dbfs);
    expect(ratioNow()).toBeCloseTo(30, 0);
  });

  it('never calls the hearing better than it was told sound like this can be, however quiet the room is', () => {
    const meters = { believed: new LevelMeter(), altered: new LevelMeter('poor') };
    for (const block of blocksOf(whiteNoise(16_000 * 3, 0.001), 1_600)) {
      for (const meter of Object.values(meters)) meter.take(block);
    }
    expect(meters.believed.hearing).toBe('good');
    expect(meters.altered.hearing).toBe('poor');
    for (const block of blocksOf(whiteNoise(16_000 * 6, 0.1), 1_600)) meters.altered.take(block);
    expect(meters.altered.hearing).toBe('too loud');
  });

  it('finds a voice faint beside the three understood before, in noise too, and any voice fit before those', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: -15, noNaN: true }),
        fc.double({ min: 0.0002, max: 0.002, noNaN: true }),
        (usualDbfs, noiseRms) => {
          const meter = new LevelMeter();
          for (const block of blocksOf(whiteNoise(16_000, noiseRms), 1_600)) meter.take(block);
          const mixedWithRoom = (voiceDbfs: number) =>
            10 * Math.log10(10 ** (voiceDbfs / 10) + 10 ** (meter.floorDbfs / 10));
          for (let utterance = 0; utterance < 3; utterance += 1) {
            expect(meter.isFaint(mixedWithRoom(usualDbfs - 20))).toBe(false);
            meter.takeVoice(mixedWithRoom(usualDbfs));
          }
          expect(meter.isFaint(mixedWithRoom(usualDbfs - 7.5))).toBe(false);
          expect(meter.isFaint(mixedWithRoom(usualDbfs - 8.5))).toBe(true);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('knows soon of an engine that started while our own voice spoke, and takes no prompt answer for the room', () => {
    const afterQuiet = () => {
      const meter = new LevelMeter();
      for (const block of blocksOf(whiteNoise(16_000 * 5, 0.001), 1_600)) meter.take(block);
      meter.resume();
      return meter;
    };
    const started = afterQuiet();
    for (const block of blocksOf(whiteNoise(16_000 * 2, 0.03), 1_600)) started.take(block);
    expect(started.floorDbfs).toBeCloseTo(20 * Math.log10(0.03), 0);
    const answered = afterQuiet();
    const quiet = whiteNoise(16_000, 0.001);
    for (const block of blocksOf(voiceLike(2_000, 0.1), 1_600)) answered.take(block);
    for (const block of blocksOf(quiet.subarray(0, 6_400), 1_600)) answered.take(block);
    expect(answered.floorDbfs).toBeCloseTo(-60, 0);
  });

  it('hears well in the quiet, and says that it is too loud soon after an engine drowns the voice', () => {
    const meter = new LevelMeter();
    for (const block of blocksOf(whiteNoise(48_000, 0.001), 1_600)) meter.take(block);
    expect(meter.hearing).toBe('good');
    for (const block of blocksOf(whiteNoise(16_000 * 6, 0.05), 1_600)) meter.take(block);
    expect(meter.hearing).toBe('too loud');
  });
});
