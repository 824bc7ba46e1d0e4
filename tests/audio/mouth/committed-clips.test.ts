import { beforeAll, describe, expect, it } from 'vitest';
import { activeLevel } from '../../../audio/mouth/active-level.ts';
import type { PackedVoice } from '../../../audio/mouth/render/clip-packs.ts';
import { type ClipRenderer, startClipRenderer } from '../../../audio/mouth/render/clip-renderer.ts';
import { VOICE_SETTINGS } from '../../../audio/mouth/render/voice-settings.ts';
import { missingClips } from '../../../audio/mouth/voice-index.ts';
import { sayInventory } from '../../../grammar/say.ts';
import { bandShares } from './band-share.ts';
import { committedClip, committedVoice, type DecodedClip, startDecoder } from './committed-voice.ts';

/** Standard speech spectrum levels for "loud" vocal effort, octave bands (ANSI S3.5-1997), in dB a hertz. */
const LOUD_VOICE = [
  { centreHz: 250, spectrumLevelDb: 41.55 },
  { centreHz: 500, spectrumLevelDb: 44.85 },
  { centreHz: 1000, spectrumLevelDb: 42.16 },
  { centreHz: 2000, spectrumLevelDb: 34.39 },
  { centreHz: 4000, spectrumLevelDb: 25.41 },
] as const;
/** Overall level of the same, dB (ANSI S3.5-1997). */
const LOUD_VOICE_DB = 74.85;
const BAND_EDGES_HZ = [...LOUD_VOICE.map(({ centreHz }) => centreHz * Math.SQRT1_2), 4000 * Math.SQRT2];

/** A sample louder than this is heard. */
const AUDIBLE = 10 ** (-45 / 20);

/** What is measured of a clip; the samples themselves are let go, since all together they fill an hour. */
interface Measured {
  readonly text: string;
  readonly levelDbfs: number;
  readonly peakDbfs: number;
  /** Share of the samples within 2 % of the peak. */
  readonly flatShare: number;
  readonly quietMs: number;
  /** Length of the speech found, less what the index says. */
  readonly lengthErrorMs: number;
  readonly speechMs: number;
  readonly rumbleShare: number;
  /** Shares of {@link LOUD_VOICE}'s bands. */
  readonly bandShares: readonly number[];
}

let voice: PackedVoice;
let renderer: ClipRenderer;
let clips: readonly Measured[];

beforeAll(async () => {
  [voice, renderer] = await Promise.all([committedVoice(), startClipRenderer()]);
  const decoded = await startDecoder();
  const all: Measured[] = [];
  for (const text of Object.keys(voice.index.clips)) {
    const { mp3, speechMs } = committedClip(voice, text);
    all.push(measured(text, speechMs, await decoded(mp3)));
  }
  clips = all;
}, 180_000);

function measured(text: string, speechMs: number, { samples, speech, sampleRateHz }: DecodedClip): Measured {
  const peak = samples.reduce((highest, sample) => Math.max(highest, Math.abs(sample)), 0);
  const [rumbleShare = 1, , ...shares] = bandShares(speech, [1, 100, ...BAND_EDGES_HZ]);
  return {
    text,
    speechMs,
    levelDbfs: activeLevel(speech, sampleRateHz).levelDbfs,
    peakDbfs: 20 * Math.log10(peak),
    flatShare: speech.filter((sample) => Math.abs(sample) >= 0.98 * peak).length / speech.length,
    quietMs: (1000 * speech.findIndex((sample) => Math.abs(sample) > AUDIBLE)) / sampleRateHz,
    lengthErrorMs: (1000 * speech.length) / sampleRateHz - speechMs,
    rumbleShare,
    bandShares: shares,
  };
}

/** The texts that do not pass, each with what was measured: a failure names every clip at once. */
function failing(measure: (clip: Measured) => number, low: number, high: number): string[] {
  return clips
    .map((clip) => ({ text: clip.text, value: measure(clip) }))
    .filter(({ value }) => !(value >= low && value <= high))
    .map(({ text, value }) => `${text}: ${value.toFixed(3)}`);
}

/** Groups of vowels, as a rough count of syllables. */
function syllables(text: string): number {
  return (
    text
      .toLowerCase()
      .replaceAll(/e\b/g, '')
      .match(/[aeiouy]+/g)?.length ?? 1
  );
}

/** Places where a phrase ends, the end of the text among them. */
function phraseEnds(text: string): number {
  return text.match(/[,.;:?!](?= )|.$/g)?.length ?? 1;
}

describe('the recorded voice', () => {
  it('has a clip for every fragment a value can be said in', () => {
    expect(missingClips(sayInventory(), voice.index)).toEqual([]);
  });

  it('was made from these texts with these settings, by this synthesiser and encoder', () => {
    const stale = Object.entries(voice.index.clips).filter(([text, { key }]) => key !== renderer.keyOf(text));
    expect(stale.map(([text]) => text)).toEqual([]);
  });

  it('comes out the same again, byte for byte', { timeout: 30_000 }, async () => {
    for (const text of ['thirteen', 'and three sixteenths', 'pounds of pull']) {
      const { mp3, speechMs } = committedClip(voice, text);
      const again = await renderer.render(text);
      expect(Buffer.compare(again.mp3, mp3), text).toBe(0);
      expect(again.speechMs).toBe(speechMs);
    }
  });

  it('is equally loud throughout: active level (ITU-T P.56) within 2 dB', () => {
    const { levelDbfs: wanted } = VOICE_SETTINGS;
    expect(failing(({ levelDbfs }) => levelDbfs, wanted - 2, wanted + 2)).toEqual([]);
  });

  it('never comes within 1 dB of full scale, and is not squashed flat', () => {
    expect(failing(({ peakDbfs }) => peakDbfs, -9, -1)).toEqual([]);
    // Clipping would show as runs of samples at the peak; speech has few.
    expect(failing(({ flatShare }) => flatShare, 0, 0.01)).toEqual([]);
  });

  it("begins with less than 30 ms of quiet once the decoder's own silence is off", () => {
    expect(failing(({ quietMs }) => quietMs, 0, 30)).toEqual([]);
  });

  it('lasts as long as the index says', () => {
    expect(failing(({ lengthErrorMs }) => lengthErrorMs, -60, 60)).toEqual([]);
  });

  it('is neither gabbled nor drawled: 90 to 450 ms a syllable, and up to 400 ms for each drawn-out end', () => {
    const drawlMs = ({ text, speechMs }: Measured) =>
      speechMs - 450 * syllables(text) - 400 * phraseEnds(text);
    expect(failing(({ text, speechMs }) => speechMs / syllables(text), 90, Number.POSITIVE_INFINITY)).toEqual(
      [],
    );
    expect(failing(drawlMs, Number.NEGATIVE_INFINITY, 0)).toEqual([]);
  });

  it('has no rumble', () => {
    expect(failing(({ rumbleShare }) => rumbleShare, 0, 0.01)).toEqual([]);
  });

  it('has on the whole the spectrum of a person speaking loudly (ANSI S3.5-1997, octave bands, "loud")', () => {
    for (const [band, { centreHz, spectrumLevelDb }] of LOUD_VOICE.entries()) {
      const share = clips.reduce((sum, { bandShares }) => sum + (bandShares[band] ?? 0), 0) / clips.length;
      const ours = 10 * Math.log10(share);
      const standard =
        spectrumLevelDb + 10 * Math.log10(centreHz * (Math.SQRT2 - Math.SQRT1_2)) - LOUD_VOICE_DB;
      expect(Math.abs(ours - standard), `${centreHz} Hz: ${ours.toFixed(1)} dB`).toBeLessThan(4);
    }
  });
});
