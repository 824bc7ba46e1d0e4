import { describe, expect, it } from 'vitest';
import {
  END_AFTER_COMPLETE_MS,
  END_AFTER_INCOMPLETE_MS,
  LONGEST_SPEECH_MS,
  SpeechDetector,
  type SpeechEvent,
} from '../../../audio/ears/speech-detector.ts';
import { blocksOf, mixedAt, seeded, voiceLike, whiteNoise } from './test-sounds.ts';

const RATE = 16_000;

function eventsIn(sound: Float32Array, detector = new SpeechDetector(), blockSamples = 1_600): SpeechEvent[] {
  return blocksOf(sound, blockSamples).flatMap((block) => detector.push(block));
}

/** Noise of root mean square 0.01 with voice in it at a ratio, from 2 s on. */
function phraseInNoise(snrDb: number, phraseMs = 900, totalMs = 5_000): Float32Array {
  const noise = whiteNoise((totalMs * RATE) / 1_000, 0.01, 3);
  return mixedAt(noise, voiceLike(phraseMs, 0.01 * 10 ** (snrDb / 20)), 2 * RATE);
}

describe('the speech detector', () => {
  it.each([40, 20, 10, 5])('bounds a phrase at %d dB to 200 ms', (snr) => {
    const [started, ended, ...more] = eventsIn(phraseInNoise(snr));
    expect(more).toEqual([]);
    expect(started?.type).toBe('started');
    if (ended?.type !== 'ended') throw new Error('the phrase never ended');
    expect(ended.because).toBe('quiet');
    expect(Math.abs(ended.startSample / RATE - 2)).toBeLessThan(0.2);
    expect(Math.abs(ended.endSample / RATE - 2.9)).toBeLessThan(0.2);
  });

  it('begins a phrase at its faint first sounds, which would have started nothing by themselves', () => {
    const rms = 0.01;
    const noise = whiteNoise(5 * RATE, rms, 3);
    const faint = mixedAt(noise, voiceLike(300, rms * 10 ** (-8 / 20)), 2 * RATE);
    expect(eventsIn(faint)).toEqual([]);
    const [started] = eventsIn(mixedAt(faint, voiceLike(600, rms * 10), 2.3 * RATE));
    expect(started?.type).toBe('started');
    expect(Math.abs((started?.startSample ?? 0) / RATE - 2)).toBeLessThan(0.1);
  });

  it('hears nothing in a minute of steady noise, a third of it at each loudness', () => {
    for (const rms of [0.0005, 0.01, 0.2]) {
      expect(eventsIn(whiteNoise(20 * RATE, rms, 11))).toEqual([]);
    }
  });

  it('does not take a knock for speech', () => {
    const knock = whiteNoise(0.04 * RATE, 0.5, 5);
    expect(eventsIn(mixedAt(whiteNoise(4 * RATE, 0.005), knock, 2 * RATE))).toEqual([]);
  });

  it('reports the same events however the sound is cut', () => {
    const sound = phraseInNoise(15);
    const whole = eventsIn(sound);
    expect(whole).toHaveLength(2);
    for (const length of [160, 333, 4_800]) expect(eventsIn(sound, undefined, length)).toEqual(whole);
  });

  it('bridges a pause within the hangover that was set, and splits at a longer one', () => {
    // VoiceXML 2.0's completetimeout is 0.3 to 1 s, its incompletetimeout longer (from memory).
    expect(END_AFTER_COMPLETE_MS).toBeGreaterThanOrEqual(300);
    expect(END_AFTER_COMPLETE_MS).toBeLessThanOrEqual(500);
    expect(END_AFTER_INCOMPLETE_MS).toBeGreaterThanOrEqual(1_000);
    expect(END_AFTER_INCOMPLETE_MS).toBeLessThanOrEqual(1_500);
    const pauseMs = (END_AFTER_COMPLETE_MS + END_AFTER_INCOMPLETE_MS) / 2;
    const first = phraseInNoise(25, 700, 7_000);
    const second = 2 * RATE + ((700 + pauseMs) * RATE) / 1_000;
    const sound = mixedAt(first, voiceLike(700, 0.01 * 10 ** (25 / 20)), second);
    const endsWith = (endAfterMs: number): number => {
      const detector = new SpeechDetector();
      detector.endAfter(endAfterMs);
      return eventsIn(sound, detector).filter(({ type }) => type === 'ended').length;
    };
    expect(endsWith(END_AFTER_COMPLETE_MS)).toBe(2);
    expect(endsWith(END_AFTER_INCOMPLETE_MS)).toBe(1);
  });

  it('decides within the hangover and a block after the last sound', () => {
    const detector = new SpeechDetector();
    const sound = phraseInNoise(25);
    let decidedAt = 0;
    blocksOf(sound, 1_600).forEach((block, i) => {
      if (detector.push(block).some(({ type }) => type === 'ended')) decidedAt = (i + 1) * 1_600;
    });
    const afterMs = (decidedAt / RATE - 2.9) * 1_000;
    expect(afterMs).toBeGreaterThan(END_AFTER_COMPLETE_MS - 100);
    expect(afterMs).toBeLessThan(END_AFTER_COMPLETE_MS + 300);
  });

  it('learns an engine that starts: one cut, then quiet, and speech over it is found', () => {
    const quiet = whiteNoise(2 * RATE, 0.001, 1);
    const engine = whiteNoise(20 * RATE, 0.03, 2);
    const sound = new Float32Array(22 * RATE);
    sound.set(quiet);
    sound.set(engine, 2 * RATE);
    const events = eventsIn(mixedAt(sound, voiceLike(900, 0.15), 18 * RATE));
    const ended = events.filter((event) => event.type === 'ended');
    const last = ended.at(-1);
    expect(
      ended.slice(0, -1).every((event) => event.endSample < (2.2 + LONGEST_SPEECH_MS / 1_000) * RATE),
    ).toBe(true);
    expect(last?.because).toBe('quiet');
    expect(Math.abs((last?.startSample ?? 0) / RATE - 18)).toBeLessThan(0.25);
  });

  it('learns a roof under hail: loud moments without end are the room, and a phrase among them is found', () => {
    const random = seeded(17);
    // A strike now and then that dies away in some hundredths of a second, over a faint hiss.
    let strike = 0;
    const rattle = whiteNoise(12 * RATE, 0.01, 4).map((sample) => {
      strike = random() < 60 / RATE ? random() ** 2 : strike * 0.997;
      return sample * (0.15 + 4 * strike);
    });
    expect(eventsIn(rattle).filter(({ type }) => type === 'ended').length).toBeLessThan(2);
    const voice = voiceLike(900, 0.05);
    const ended = eventsIn(mixedAt(rattle, voice, 9 * RATE)).filter((event) => event.type === 'ended');
    const last = ended.at(-1);
    expect(last?.because).toBe('quiet');
    expect(Math.abs((last?.startSample ?? 0) / RATE - 9)).toBeLessThan(0.3);
    // A strike right behind the phrase is taken for its end: late does no harm, early would cut it off.
    expect((last?.endSample ?? 0) / RATE).toBeGreaterThan(9.7);
    expect((last?.endSample ?? 0) / RATE).toBeLessThan(11.2);
  });

  it('drops speech in progress at a gap and keeps what it knows of the room', () => {
    const detector = new SpeechDetector();
    const sound = phraseInNoise(25);
    eventsIn(sound.subarray(0, 2.4 * RATE), detector);
    expect(detector.isSpeech).toBe(true);
    detector.resumeAt(100 * RATE);
    expect(detector.isSpeech).toBe(false);
    expect(eventsIn(whiteNoise(2 * RATE, 0.01, 8), detector)).toEqual([]);
    const [started] = eventsIn(voiceLike(600, 0.1), detector);
    expect(started?.type === 'started' && started.startSample / RATE).toBeGreaterThan(101.7);
  });

  it('survives digital silence', () => {
    const sound = mixedAt(new Float32Array(4 * RATE), voiceLike(800, 0.05), 2 * RATE);
    const ended = eventsIn(sound).filter(({ type }) => type === 'ended');
    expect(ended).toHaveLength(1);
  });

  it.each([0, 99, 3_001, Number.NaN])('refuses %d ms of quiet as the end of speech', (ms) => {
    expect(() => new SpeechDetector().endAfter(ms)).toThrow(/100 to 3,000 ms/);
  });
});
