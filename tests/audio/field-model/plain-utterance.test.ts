import { describe, expect, it } from 'vitest';
import { padMs } from '../../../audio/command-model/listening/prepare-utterance.ts';
import { plainUtterance } from '../../../audio/field-model/plain-utterance.ts';

describe('plain sound for a network that wants it', () => {
  const raw = Float32Array.from({ length: 48_000 }, (_, i) => Math.sin(i / 7) / 2);

  it('is what the microphone gave, with the room beside the speech, but for one step of dither', () => {
    const { samples, speechStartMs, speechEndMs } = plainUtterance(raw, 16_000, 32_000);
    expect([speechStartMs, speechEndMs]).toEqual([padMs, padMs + 1_000]);
    const from = 16_000 - 16 * padMs;
    expect(samples.length).toBe(16_000 + 2 * 16 * padMs);
    const strays = samples.map((sample, i) => Math.abs(sample - (raw[from + i] as number)));
    expect(Math.max(...strays)).toBeLessThan(1.001 / 32_768);
  });

  it('takes what there is where the speech begins or ends with the sound', () => {
    const { samples, speechStartMs, speechEndMs } = plainUtterance(raw, 0, 48_000);
    expect(samples.length).toBe(48_000);
    expect([speechStartMs, speechEndMs]).toEqual([0, 3_000]);
  });

  it('leaves no digital silence', () => {
    const { samples } = plainUtterance(new Float32Array(48_000), 16_000, 32_000);
    expect(samples.filter((sample) => sample === 0).length).toBeLessThan(100);
  });
});
