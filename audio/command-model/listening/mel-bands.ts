/**
 * The 25 mel bands in which the acoustic model hears, and the cepstra it is scored on.
 * Source: feat/mel-computations.cc and feat/feature-mfcc.cc of Kaldi (Apache 2.0) with the options of
 * ../model-files.ts; the band edges are those of the model's feat.params.
 */
export const bandCount = 25;
export const cepstrumCount = 13;
const lowHz = 130;
const highHz = 6800;
const lifter = 22;

const mel = (hz: number) => 1127 * Math.log(1 + hz / 700);

/** For each band its weight (0 to 1) in each bin of a transform of that length. */
export function bandWeights(transformLength: number, sampleRate: number): readonly Float64Array[] {
  const bins = transformLength / 2 + 1;
  const width = (mel(highHz) - mel(lowHz)) / (bandCount + 1);
  return Array.from({ length: bandCount }, (_, band) => {
    const left = mel(lowHz) + band * width;
    return Float64Array.from({ length: bins }, (_, bin) => {
      const at = (mel((bin * sampleRate) / transformLength) - left) / width;
      return Math.max(0, Math.min(at, 2 - at));
    });
  });
}

const cosineRow = (order: number): Float64Array =>
  Float64Array.from(
    { length: bandCount },
    (_, band) =>
      Math.sqrt((order === 0 ? 1 : 2) / bandCount) * Math.cos((Math.PI * order * (band + 0.5)) / bandCount),
  );
const cosines = Array.from({ length: cepstrumCount }, (_, order) => cosineRow(order));
const lifts = cosines.map((_, order) => 1 + (lifter / 2) * Math.sin((Math.PI * order) / lifter));

/** Cepstra (orthonormal cosine transform, liftered) of natural logarithms of band energies. */
export function cepstraOf(logBands: ArrayLike<number>): Float64Array {
  return Float64Array.from(cosines, (row, order) => {
    let sum = 0;
    for (let band = 0; band < bandCount; band++) sum += (row[band] as number) * (logBands[band] as number);
    return sum * (lifts[order] as number);
  });
}

/** The smooth log band energies that have just these cepstra. */
export function logBandsOf(cepstra: ArrayLike<number>): Float64Array {
  return Float64Array.from({ length: bandCount }, (_, band) => {
    let sum = 0;
    cosines.forEach((row, order) => {
      sum += ((row[band] as number) * (cepstra[order] as number)) / (lifts[order] as number);
    });
    return sum;
  });
}
