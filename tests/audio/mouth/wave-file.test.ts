import { describe, expect, it } from 'vitest';
import { readWave } from '../../../audio/mouth/render/wave-file.ts';

/** A WAVE file by the book: RIFF header, format part, an odd part to be skipped, samples. */
function wave({ channels = 1, bits = 16, samples = [0, 16_384, -32_768] } = {}): Uint8Array {
  const file = new DataView(new ArrayBuffer(12 + 24 + 12 + 8 + samples.length * 2));
  const tag = (at: number, text: string) => {
    for (const [index, letter] of [...text].entries()) file.setUint8(at + index, letter.charCodeAt(0));
  };
  tag(0, 'RIFF');
  file.setUint32(4, file.byteLength - 8, true);
  tag(8, 'WAVEfmt ');
  file.setUint32(16, 16, true);
  file.setUint16(20, 1, true);
  file.setUint16(22, channels, true);
  file.setUint32(24, 16_000, true);
  file.setUint32(28, 32_000, true);
  file.setUint16(32, 2, true);
  file.setUint16(34, bits, true);
  tag(36, 'LIST');
  file.setUint32(40, 3, true);
  tag(48, 'data');
  file.setUint32(52, samples.length * 2, true);
  for (const [index, sample] of samples.entries()) file.setInt16(56 + 2 * index, sample, true);
  return new Uint8Array(file.buffer);
}

describe('WAVE files', () => {
  it('give their samples at full scale 1', () => {
    expect(readWave(wave())).toEqual({ samples: Float32Array.of(0, 0.5, -1), sampleRateHz: 16_000 });
  });

  it('are refused in words when they are not what is expected', () => {
    expect(() => readWave(wave({ channels: 2 }))).toThrow(/Only one channel/);
    expect(() => readWave(wave({ bits: 8 }))).toThrow(/8-bit/);
    expect(() => readWave(wave().subarray(0, 58))).toThrow(/ends inside its data part/);
    expect(() => readWave(wave().subarray(0, 40))).toThrow(/holds no samples/);
    expect(() => readWave(new TextEncoder().encode('not a sound at all'))).toThrow(/not a WAVE file/);
  });
});
