import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { createEncoder } from 'wasm-media-encoders';

/**
 * MP3 is the one compact coding that decodeAudioData takes in every browser of the last ten years, iPadOS Safari
 * among them; Opus in a file is not.
 */
export interface Mp3Encoder {
  /** The program itself, for telling one version from another. */
  readonly program: Uint8Array;
  /** @param samples one channel, full scale 1; the same samples always give the same bytes */
  encode(samples: Float32Array): Uint8Array;
}

/** Starts the LAME encoder at a constant bit rate. */
export async function startMp3Encoder(
  sampleRateHz: 16_000,
  bitrateKbps: 24 | 32 | 40 | 48,
): Promise<Mp3Encoder> {
  const path = createRequire(import.meta.url).resolve('wasm-media-encoders/wasm/mp3');
  const program = await readFile(path);
  const encoder = await createEncoder('audio/mpeg', program);
  return {
    program,
    encode(samples) {
      encoder.configure({
        channels: 1,
        sampleRate: sampleRateHz,
        outputSampleRate: sampleRateHz,
        bitrate: bitrateKbps,
      });
      // The encoder hands out its own buffer, which the next call overwrites.
      const body = encoder.encode([samples]).slice();
      const close = encoder.finalize().slice();
      const bytes = new Uint8Array(body.length + close.length);
      bytes.set(body);
      bytes.set(close, body.length);
      return bytes;
    },
  };
}
