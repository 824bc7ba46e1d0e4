/**
 * Keeps peaks under a ceiling without bending the waveform: the gain sinks smoothly before a peak and rises after it.
 * @param samples one channel
 * @param ceiling largest magnitude let through, full scale 1
 * @param sampleRateHz samples a second
 * @param attackS how long before a peak the gain begins to sink, and after it has risen again, seconds
 */
export function limited(
  samples: Float32Array,
  ceiling: number,
  sampleRateHz: number,
  attackS: number,
): Float32Array {
  const reach = Math.max(1, Math.round(attackS * sampleRateHz));
  const wanted = samples.map((sample) => Math.min(1, ceiling / Math.max(Math.abs(sample), ceiling)));
  const held = lowestNearby(wanted, reach);
  // Averaging over the very span the minimum was held for can never end above the gain a peak needs.
  const gain = averageNearby(held, reach);
  return samples.map((sample, at) => sample * (gain[at] ?? 1));
}

/** The lowest value within reach of each place. Few values are under 1, so each of those is spread, not each place searched. */
function lowestNearby(values: Float32Array, reach: number): Float32Array {
  const lowest = new Float32Array(values.length).fill(1);
  for (const [at, value] of values.entries()) {
    if (value >= 1) continue;
    const end = Math.min(values.length, at + reach + 1);
    for (let near = Math.max(0, at - reach); near < end; near++) {
      lowest[near] = Math.min(lowest[near] ?? 1, value);
    }
  }
  return lowest;
}

function averageNearby(values: Float32Array, reach: number): Float32Array {
  const sums = new Float64Array(values.length + 1);
  for (const [at, value] of values.entries()) sums[at + 1] = (sums[at] ?? 0) + value;
  return values.map((_, at) => {
    const from = Math.max(0, at - reach);
    const to = Math.min(values.length, at + reach + 1);
    return ((sums[to] ?? 0) - (sums[from] ?? 0)) / (to - from);
  });
}
