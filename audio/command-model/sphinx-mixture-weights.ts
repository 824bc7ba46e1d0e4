/**
 * Reads `sendump`, the quantised mixture weights of a Sphinx semi-continuous model.
 * Source of the format: `read_sendump` in pocketsphinx/src/libpocketsphinx/ptm_mgau.c (CMU Sphinx): length-prefixed
 * header texts up to an empty one, rows and columns, then one byte for every stream, density and senone.
 */
import { ByteCursor } from './byte-cursor.ts';

/** One step of a quantised weight in nats: Sphinx keeps log weights to base 1.0001, shifted right by 10 bits. */
const natsPerStep = Math.log(1.0001) * 2 ** 10;

export interface MixtureWeights {
  readonly streams: number;
  readonly densities: number;
  readonly senones: number;
  /** The weight (0 to 1) of a density in a senone. */
  weight(stream: number, density: number, senone: number): number;
}

/** @param streams how many feature streams the model has; the file itself does not say it. */
export function readMixtureWeights(bytes: Uint8Array, fileName: string, streams: number): MixtureWeights {
  const cursor = new ByteCursor(bytes, fileName);
  for (let length = cursor.int32(); length > 0; length = cursor.int32()) {
    const text = new TextDecoder('latin1').decode(cursor.byteArray(length));
    const clusters = /^cluster_count (\d+)/.exec(text)?.[1];
    if (clusters !== undefined && clusters !== '0') {
      throw new Error(`${fileName} holds clustered weights, which this reader does not know.`);
    }
  }
  const densities = cursor.int32();
  const senones = cursor.int32();
  const steps = cursor.byteArray(streams * densities * senones);
  const weights = Float64Array.from({ length: 256 }, (_, step) => Math.exp(-step * natsPerStep));
  return {
    streams,
    densities,
    senones,
    weight(stream, density, senone) {
      const step = steps[(stream * densities + density) * senones + senone];
      const weight = step === undefined ? undefined : weights[step];
      if (weight === undefined)
        throw new Error(`${fileName} has no weight ${stream}, ${density}, ${senone}.`);
      return weight;
    },
  };
}
