/**
 * Reads a WAVE file of one channel of 16-bit samples, the only kind the synthesiser writes (RIFF WAVE, Microsoft and
 * IBM, "Multimedia Programming Interface and Data Specifications 1.0", 1991).
 * @throws Error for any other file
 */
export function readWave(bytes: Uint8Array): {
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
} {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 12 || tag(bytes, 0) !== 'RIFF' || tag(bytes, 8) !== 'WAVE') {
    throw new Error('This is not a WAVE file.');
  }
  let sampleRateHz: number | undefined;
  for (let at = 12; at + 8 <= bytes.length; ) {
    const name = tag(bytes, at);
    const body = at + 8;
    const length = view.getUint32(at + 4, true);
    if (body + length > bytes.length) throw new Error(`The WAVE file ends inside its ${name.trim()} part.`);
    if (name === 'fmt ') sampleRateHz = sampleRateOf(view, body);
    if (name === 'data') {
      if (sampleRateHz === undefined) throw new Error('The WAVE file has samples before their format.');
      const samples = Float32Array.from({ length: length >> 1 }, (_, index) => {
        return view.getInt16(body + 2 * index, true) / 32_768;
      });
      return { samples, sampleRateHz };
    }
    at = body + length + (length % 2);
  }
  throw new Error('The WAVE file holds no samples.');
}

function sampleRateOf(view: DataView, body: number): number {
  const PCM = 1;
  const [coding, channels] = [view.getUint16(body, true), view.getUint16(body + 2, true)];
  const bits = view.getUint16(body + 14, true);
  if (coding !== PCM || channels !== 1 || bits !== 16) {
    throw new Error(
      `Only one channel of 16-bit samples is read, not ${channels} of ${bits}-bit coding ${coding}.`,
    );
  }
  return view.getUint32(body + 4, true);
}

function tag(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}
