/** A hammer on steel and wood: single blows, each a knock that rings a little. */

/** Blows about once a second, peaks near 1; the quiet between them is empty. */
export function hammerBlows(samples: number, sampleRate: number, random: () => number): Float32Array {
  const out = new Float32Array(samples);
  for (let at = Math.round(sampleRate * random()); at < samples; ) {
    const rings = Array.from({ length: 5 }, () => ({
      hz: 150 + 4000 * random() ** 2,
      decay: sampleRate * (0.01 + 0.08 * random()),
    }));
    const length = Math.min(Math.round(0.4 * sampleRate), samples - at);
    for (let i = 0; i < length; i++) {
      let sum = 0;
      for (const { hz, decay } of rings)
        sum += Math.exp(-i / decay) * Math.sin((2 * Math.PI * hz * i) / sampleRate);
      out[at + i] = (out[at + i] as number) + sum / rings.length;
    }
    at += Math.round(sampleRate * (0.5 + 1.2 * random()));
  }
  return out;
}
