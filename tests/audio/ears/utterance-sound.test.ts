import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BLOCK_SAMPLES, EARS_RATE_HZ } from '../../../audio/ears/sound-format.ts';
import { UtteranceSound } from '../../../audio/ears/utterance-sound.ts';

const TENTH_SAMPLES = EARS_RATE_HZ / 10;

/** A stream whose every sample is its own position, negative as heard, so that nothing can be moved unseen. Exact up to 2^24. */
function stream() {
  const sound = new UtteranceSound();
  let position = 0;
  return {
    sound,
    play(tenths: number, isSpeech: boolean): void {
      for (const end = position + tenths * TENTH_SAMPLES; position < end; ) {
        const start = position;
        position += BLOCK_SAMPLES;
        const mixed = Float32Array.from({ length: BLOCK_SAMPLES }, (_, at) => start + at);
        const denoised = new Float32Array(BLOCK_SAMPLES);
        sound.take({ heard: mixed.map((sample) => -sample), denoised, mixed }, isSpeech, position);
      }
    },
    skip(tenths: number): void {
      position += tenths * TENTH_SAMPLES;
      sound.clear();
    },
    get position(): number {
      return position;
    },
  };
}

describe('the sound of an utterance', () => {
  it('finds every sample of the speech, and 900 ms before it, at its place', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 9, max: 60 }),
        fc.integer({ min: 1, max: 30 }),
        (roomTenths, speechTenths) => {
          const run = stream();
          run.play(roomTenths, false);
          run.play(speechTenths, true);
          const { samples, indexOf } = run.sound.soFar();
          for (let back = 1; back <= (speechTenths + 9) * TENTH_SAMPLES; back += 797) {
            expect(samples[indexOf(run.position - back)]).toBe(run.position - back);
          }
        },
      ),
      { numRuns: 20 },
    );
  });

  it('has three seconds of the room before it, also from before our own voice spoke', () => {
    const run = stream();
    run.play(50, false);
    run.skip(100);
    run.play(2, false);
    run.play(5, true);
    const { samples, indexOf } = run.sound.soFar();
    expect(samples).toHaveLength(3 * 16_000 + 7 * TENTH_SAMPLES);
    const speech = run.position - 5 * TENTH_SAMPLES;
    expect(samples[indexOf(speech)]).toBe(speech);
    // In front lies the room as it was, less the 900 ms that were held back when the mouth began.
    expect(samples[0]).toBe((41 - 30) * TENTH_SAMPLES);
  });

  it('never takes speech for the room', () => {
    const run = stream();
    run.play(40, false);
    run.play(20, true);
    const before = run.sound.roomMs;
    run.skip(0);
    run.play(6, false);
    const { samples } = run.sound.soFar();
    const speechFrom = 40 * TENTH_SAMPLES;
    const speechTo = 60 * TENTH_SAMPLES;
    expect(samples.some((sample) => sample >= speechFrom && sample < speechTo)).toBe(false);
    expect(run.sound.roomMs).toBe(Math.min(3_000, before));
  });

  it('keeps what the microphone heard of the speech, and nothing from before our own voice', () => {
    fc.assert(
      fc.property(fc.nat(8 * TENTH_SAMPLES), fc.nat(8 * TENTH_SAMPLES), (start, length) => {
        const run = stream();
        run.play(20, false);
        run.skip(30);
        run.play(8, true);
        const from = run.position - 8 * TENTH_SAMPLES;
        const heard = run.sound.heardBetween(from + start, from + start + length);
        expect(heard).toHaveLength(Math.min(length, 8 * TENTH_SAMPLES - start));
        if (heard.length > 0) expect(heard[0]).toBe(-(from + start));
        expect(run.sound.heardBetween(0, from)).toHaveLength(0);
      }),
      { numRuns: 30 },
    );
  });

  it('forgets the room when it is told to', () => {
    const run = stream();
    run.play(40, false);
    run.sound.forgetRoom();
    expect(run.sound.soFar().samples).toHaveLength(0);
    expect(run.sound.roomMs).toBe(0);
  });
});
