/** Wind on a microphone without a shield: turbulence, nearly all of it low, in gusts, with a rustle at the strongest. */
import { atUnitLevel, filtered, mixed, whiteNoise } from './basics.ts';

/** Root mean square 1. */
export function windNoise(samples: number, sampleRate: number, random: () => number): Float32Array {
  const gust = gusts(samples, sampleRate, random);
  const rumble = filtered(
    filtered(whiteNoise(samples, random), 'low', 120, sampleRate),
    'low',
    400,
    sampleRate,
  );
  const rustle = filtered(whiteNoise(samples, random), 'band', 1500, sampleRate, 0.4);
  return atUnitLevel(
    mixed(
      [rumble.map((sample, i) => sample * (gust[i] as number)), 1],
      [rustle.map((sample, i) => sample * (gust[i] as number) ** 3), 0.15],
    ),
  );
}

/** How hard it blows, 0.2 to about 2: drawn about twice a second and gone to evenly. */
function gusts(samples: number, sampleRate: number, random: () => number): Float32Array {
  const out = new Float32Array(samples);
  let [from, to, left, length] = [1, 1, 0, 1];
  for (let i = 0; i < samples; i++) {
    if (left === 0) {
      from = to;
      to = 0.2 + 1.8 * random() ** 2;
      length = Math.round(sampleRate * (0.2 + 0.6 * random()));
      left = length;
    }
    left--;
    out[i] = from + ((to - from) * (length - left)) / length;
  }
  return out;
}
