/** Samples of one channel as a buffer that a context can play. */
export function bufferOf(
  context: BaseAudioContext,
  samples: Float32Array<ArrayBuffer>,
  sampleRateHz: number,
): AudioBuffer {
  // The shortest buffer there may be has one sample.
  const buffer = context.createBuffer(1, Math.max(1, samples.length), sampleRateHz);
  buffer.copyToChannel(samples, 0);
  return buffer;
}
