/** Mono 16-bit sound files. Source of the format: Microsoft and IBM, "Multimedia Programming Interface" (RIFF), 1991. */
import { readFileSync, writeFileSync } from 'node:fs';

export interface Sound {
  readonly sampleRate: number;
  /** -1 to 1. */
  readonly samples: Float32Array;
}

export function readWav(path: string): Sound {
  const bytes = readFileSync(path);
  if (bytes.toString('latin1', 0, 4) !== 'RIFF' || bytes.toString('latin1', 8, 12) !== 'WAVE') {
    throw new Error(`${path} is not a WAV file.`);
  }
  let sampleRate = 0;
  for (let at = 12; at + 8 <= bytes.length; ) {
    const kind = bytes.toString('latin1', at, at + 4);
    const size = bytes.readUInt32LE(at + 4);
    const start = at + 8;
    if (kind === 'fmt ') {
      const [format, channels] = [bytes.readUInt16LE(start), bytes.readUInt16LE(start + 2)];
      sampleRate = bytes.readUInt32LE(start + 4);
      if (format !== 1 || channels !== 1 || bytes.readUInt16LE(start + 14) !== 16) {
        throw new Error(`${path} is not mono 16-bit PCM.`);
      }
    } else if (kind === 'data') {
      const count = Math.floor(Math.min(size, bytes.length - start) / 2);
      return {
        sampleRate,
        samples: Float32Array.from({ length: count }, (_, i) => bytes.readInt16LE(start + 2 * i) / 32768),
      };
    }
    at = start + size + (size % 2);
  }
  throw new Error(`${path} holds no sound.`);
}

export function writeWav(path: string, sound: Sound): void {
  writeFileSync(path, wavOf(sound));
}

/** A sound as the bytes of its file. */
export function wavOf({ sampleRate, samples }: Sound): Buffer {
  const bytes = Buffer.alloc(44 + 2 * samples.length);
  bytes.write('RIFF', 0, 'latin1');
  bytes.writeUInt32LE(36 + 2 * samples.length, 4);
  bytes.write('WAVEfmt ', 8, 'latin1');
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20); // PCM
  bytes.writeUInt16LE(1, 22); // channels
  bytes.writeUInt32LE(sampleRate, 24);
  bytes.writeUInt32LE(2 * sampleRate, 28);
  bytes.writeUInt16LE(2, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write('data', 36, 'latin1');
  bytes.writeUInt32LE(2 * samples.length, 40);
  samples.forEach((sample, i) => {
    bytes.writeInt16LE(Math.max(-32768, Math.min(32767, Math.round(sample * 32768))), 44 + 2 * i);
  });
  return bytes;
}
