/** A 16-bit mono WAV file of a sine. @param amplitude its peak, 0 to 1 */
export function toneWav(hz: number, seconds: number, rateHz: number, amplitude: number): Buffer {
  const samples = Math.round(seconds * rateHz);
  const wav = Buffer.alloc(44 + 2 * samples);
  wav.write('RIFF', 0);
  wav.writeUInt32LE(36 + 2 * samples, 4);
  wav.write('WAVEfmt ', 8);
  wav.writeUInt32LE(16, 16);
  wav.writeUInt16LE(1, 20);
  wav.writeUInt16LE(1, 22);
  wav.writeUInt32LE(rateHz, 24);
  wav.writeUInt32LE(2 * rateHz, 28);
  wav.writeUInt16LE(2, 32);
  wav.writeUInt16LE(16, 34);
  wav.write('data', 36);
  wav.writeUInt32LE(2 * samples, 40);
  for (let i = 0; i < samples; i += 1) {
    wav.writeInt16LE(Math.round(32_767 * amplitude * Math.sin((2 * Math.PI * hz * i) / rateHz)), 44 + 2 * i);
  }
  return wav;
}
