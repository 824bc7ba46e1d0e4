/**
 * The Gaussian mixtures as a Kaldi nnet3 network: the same parameters, nothing trained.
 *
 * For each feature stream, log densities are affine in (x, x*x); a softmax over all of them gives each density's share
 * of the frame (a shift common to every senone, so harmless); a senone is a weighted sum of its codebook's shares plus
 * a floor. The streams' sums are multiplied, and a one-wide NormalizeComponent with log-stddev gives the logarithm.
 * Source of the format: nnet3/nnet-simple-component.cc, nnet-normalize-component.cc, nnet-nnet.cc of Kaldi
 * (Apache 2.0). Source of the score: `ptm_mgau.c` of PocketSphinx, which floors each stream's share likewise.
 */
import type { AcousticSource } from './acoustic-source.ts';
import type { KaldiWriter } from './kaldi-binary.ts';
import { expectedMean } from './listening/expected-mean.ts';
import type { CodebookGroup, OutputLayout } from './output-layout.ts';
import type { TiedSenones } from './senone-tying.ts';

export interface ScoringTuning {
  /** Added to every stream's mixture: the least share of a frame a senone can have (0 to 1). */
  readonly shareFloor: number;
  /** Least variance of a Gaussian, in squared feature units. */
  readonly varianceFloor: number;
  /** The network is worked out for every so many frames, and holds for those between; as PocketSphinx's `-ds`. */
  readonly everyFrames: number;
  /** Senones that the network tells apart at most; more cost time in every frame. */
  readonly senoneLimit: number;
}

/** Keeps the product of three floored shares above the 2^-33 at which Kaldi floors a NormalizeComponent's input. */
const shareScale = 1e4;

/** Mantissa bits kept: the rest would be noise that does not compress. */
const gaussianBits = 13;
const weightBits = 9;

/** Frames of context on each side that second differences need. */
const context = 3;

/**
 * The network's output for a slot: each slot has two, and the second is the logarithm. Behind the layout's slots stand
 * any speech and any senone.
 */
export function outputOfSlot(slot: number): number {
  return 2 * slot + 1;
}

/** @returns `value` with its mantissa rounded to `bits` binary digits. */
export function roundMantissa(value: number, bits: number): number {
  if (value === 0 || !Number.isFinite(value)) return value;
  const step = 2 ** (Math.floor(Math.log2(Math.abs(value))) - bits);
  return Math.round(value / step) * step;
}

/**
 * The matrix that makes Sphinx's three streams of frames t-3 ... t+3: c(t); c(t+2) - c(t-2);
 * c(t+3) - c(t-1) - c(t+1) + c(t-3). Source: `feat_1s_c_d_dd_cep2feat` in sphinxbase/src/libsphinxbase/feat/feat.c.
 */
export function differenceMatrix(cepstra: number): Float64Array {
  const width = (2 * context + 1) * cepstra;
  const matrix = new Float64Array(3 * cepstra * width);
  for (let d = 0; d < cepstra; d++) {
    const add = (stream: number, frame: number, value: number) => {
      const cell = (stream * cepstra + d) * width + (frame + context) * cepstra + d;
      matrix[cell] = (matrix[cell] ?? 0) + value;
    };
    add(0, 0, 1);
    add(1, 2, 1);
    add(1, -2, -1);
    add(2, 3, 1);
    add(2, -1, -1);
    add(2, 1, -1);
    add(2, -3, 1);
  }
  return matrix;
}

export function writeScoringNetwork(
  writer: KaldiWriter,
  source: AcousticSource,
  layout: OutputLayout,
  tied: TiedSenones,
  tuning: ScoringTuning,
): void {
  const streams = source.means.streamLengths;
  const cepstra = streams[0] ?? 0;
  if (streams.some((length) => length !== cepstra)) throw new Error('Feature streams of different lengths.');
  const codebooks = layout.groups.flatMap((group) => group.codebooks);
  const densities = source.means.densities;

  const components: [name: string, write: () => void][] = [];
  const offsets = Array.from({ length: 2 * context + 1 }, (_, i) => `Offset(input, ${i - context})`);
  const config: string[] = [
    `input-node name=input dim=${cepstra}`,
    `component-node name=features component=features input=Append(${offsets.join(', ')})`,
    'component-node name=squares component=squares input=Append(features, features)',
  ];
  components.push([
    'features',
    () => {
      const rows = streams.length * cepstra;
      const bias = Float64Array.from({ length: rows }, (_, row) =>
        row < cepstra ? -(expectedMean[row] ?? 0) : 0,
      );
      writeAffine(writer, rows, offsets.length * cepstra, differenceMatrix(cepstra), bias);
    },
  ]);
  components.push([
    'squares',
    () => writeProduct(writer, 2 * streams.length * cepstra, streams.length * cepstra),
  ]);

  streams.forEach((_, stream) => {
    const range = `dim-offset=${stream * cepstra} dim=${cepstra}`;
    config.push(
      `dim-range-node name=x${stream} input-node=features ${range}`,
      `dim-range-node name=xx${stream} input-node=squares ${range}`,
      `component-node name=densities${stream} component=densities${stream} input=Append(x${stream}, xx${stream})`,
      `component-node name=shares${stream} component=shares${stream} input=densities${stream}`,
    );
    components.push([`densities${stream}`, () => writeDensities(writer, source, codebooks, stream, tuning)]);
    components.push([`shares${stream}`, () => writeSoftmax(writer, codebooks.length * densities)]);
    let start = 0;
    layout.groups.forEach((group, g) => {
      const width = group.codebooks.length * densities;
      config.push(
        `dim-range-node name=part${stream}g${g} input-node=shares${stream} dim-offset=${start} dim=${width}`,
        `component-node name=mix${stream}g${g} component=mix${stream}g${g} input=part${stream}g${g}`,
      );
      components.push([
        `mix${stream}g${g}`,
        () => writeMixtures(writer, source, group, tied, stream, tuning),
      ]);
      start += width;
    });
    config.push(`component-node name=mix${stream}any component=mix${stream}any input=shares${stream}`);
    components.push([`mix${stream}any`, () => writeAnySpeech(writer, source, codebooks, stream, tuning)]);
  });
  layout.groups.forEach((group, g) => {
    const size = group.codebooks.length * group.slots;
    const mixes = streams.map((_, stream) => `mix${stream}g${g}`);
    config.push(
      `component-node name=product${g} component=product${g} input=Append(${mixes.join(', ')})`,
      `component-node name=log${g} component=log${g} input=product${g}`,
    );
    components.push([`product${g}`, () => writeProduct(writer, streams.length * size, size)]);
    components.push([`log${g}`, () => writeLogarithm(writer, size)]);
  });
  const anyMixes = streams.map((_, stream) => `mix${stream}any`);
  config.push(
    `component-node name=productAny component=productAny input=Append(${anyMixes.join(', ')})`,
    'component-node name=logAny component=logAny input=productAny',
  );
  components.push(['productAny', () => writeProduct(writer, streams.length, 1)]);
  components.push(['logAny', () => writeLogarithm(writer, 1)]);
  const products = layout.groups.map((_, g) => `product${g}`);
  config.push(
    `component-node name=mixSenones component=mixSenones input=Append(${products.join(', ')})`,
    'component-node name=logSenones component=logSenones input=mixSenones',
  );
  components.push(['mixSenones', () => writeAnySenone(writer, source, layout)]);
  components.push(['logSenones', () => writeLogarithm(writer, 1)]);
  const logs = [...layout.groups.map((_, g) => `log${g}`), 'logAny', 'logSenones'].map(
    (log) => `Round(${log}, ${tuning.everyFrames})`,
  );
  config.push(`output-node name=output input=Append(${logs.join(', ')}) objective=linear`);

  writer.token('<Nnet3>').text(`\n${config.join('\n')}\n\n`);
  writer.token('<NumComponents>').int32(components.length);
  for (const [name, write] of components) {
    writer.token('<ComponentName>').token(name);
    write();
  }
  writer.token('</Nnet3>').token('<LeftContext>').int32(context).token('<RightContext>').int32(context);
  writer.token('<Priors>').vector([]); // none: senones of generative mixtures are likelihoods already
}

function writeAffine(
  writer: KaldiWriter,
  rows: number,
  columns: number,
  weights: ArrayLike<number>,
  bias: ArrayLike<number>,
): void {
  writer.token('<FixedAffineComponent>').token('<LinearParams>').matrix(rows, columns, weights);
  writer.token('<BiasParams>').vector(bias).token('</FixedAffineComponent>');
}

function writeProduct(writer: KaldiWriter, inputs: number, outputs: number): void {
  writer.token('<ElementwiseProductComponent>').token('<InputDim>').int32(inputs);
  writer.token('<OutputDim>').int32(outputs).token('</ElementwiseProductComponent>');
}

function writeSoftmax(writer: KaldiWriter, size: number): void {
  writer.token('<SoftmaxComponent>').token('<Dim>').int32(size);
  writer.token('<ValueAvg>').vector([]).token('<DerivAvg>').vector([]);
  writer.token('<Count>').float64(0).token('</SoftmaxComponent>');
}

function writeLogarithm(writer: KaldiWriter, size: number): void {
  writer.token('<NormalizeComponent>').token('<InputDim>').int32(size).token('<BlockDim>').int32(1);
  writer.token('<TargetRms>').float32(1).token('<AddLogStddev>').boolean(true).token('</NormalizeComponent>');
}

/** Log density of a diagonal Gaussian, affine in x and x*x. */
function writeDensities(
  writer: KaldiWriter,
  source: AcousticSource,
  codebooks: readonly number[],
  stream: number,
  tuning: ScoringTuning,
): void {
  const densities = source.means.densities;
  const length = source.means.streamLengths[stream] ?? 0;
  const rows = codebooks.length * densities;
  const weights = new Float64Array(rows * 2 * length);
  const bias = new Float64Array(rows);
  codebooks.forEach((codebook, c) => {
    for (let density = 0; density < densities; density++) {
      const row = c * densities + density;
      const mean = source.means.vector(codebook, stream, density);
      const variance = source.variances.vector(codebook, stream, density);
      let constant = 0;
      for (let d = 0; d < length; d++) {
        const v = Math.max(variance[d] ?? 0, tuning.varianceFloor);
        // The constant is made from the rounded weights, so that rounding moves a Gaussian but never lifts it.
        const linear = roundMantissa((mean[d] ?? 0) / v, gaussianBits);
        const square = roundMantissa(-1 / (2 * v), gaussianBits);
        weights[row * 2 * length + d] = linear;
        weights[row * 2 * length + length + d] = square;
        constant += (linear * linear) / (4 * square) - Math.log(2 * Math.PI * v) / 2;
      }
      bias[row] = roundMantissa(constant, gaussianBits + 4);
    }
  });
  writeAffine(writer, rows, 2 * length, weights, bias);
}

function writeMixtures(
  writer: KaldiWriter,
  source: AcousticSource,
  group: CodebookGroup,
  tied: TiedSenones,
  stream: number,
  tuning: ScoringTuning,
): void {
  const densities = source.means.densities;
  const rows = group.codebooks.length * group.slots;
  const weights = new Float64Array(rows * densities);
  group.senones.forEach((senones, block) => {
    senones.forEach((senone, slot) => {
      const row = (block * group.slots + slot) * densities;
      const members = tied.members(senone);
      for (let density = 0; density < densities; density++) {
        const weight = mean(members.map((member) => source.mixtureWeights.weight(stream, density, member)));
        weights[row + density] = roundMantissa(weight * shareScale, weightBits);
      }
    });
  });
  const bias = new Float64Array(rows).fill(tuning.shareFloor * shareScale);
  writer.token('<BlockAffineComponent>').token('<LearningRate>').float32(0);
  writer.token('<NumBlocks>').int32(group.codebooks.length);
  writer.token('<LinearParams>').matrix(rows, densities, weights);
  writer.token('<BiasParams>').vector(bias).token('</BlockAffineComponent>');
}

/**
 * Any speech: a mixture over the codebooks of all phones that are no fillers, phones alike, each phone the mean of all
 * its senones. It fits everything a little, noisy speech as well as clear.
 */
function writeAnySpeech(
  writer: KaldiWriter,
  source: AcousticSource,
  codebooks: readonly number[],
  stream: number,
  tuning: ScoringTuning,
): void {
  const densities = source.means.densities;
  const speech = codebooks.filter((codebook) => !source.phones.isFiller(codebook));
  const weights = codebooks.flatMap((codebook) => {
    if (!speech.includes(codebook)) return Array.from({ length: densities }, () => 0);
    const senones = source.phones.baseOfSenone.flatMap((base, senone) => (base === codebook ? [senone] : []));
    return Array.from({ length: densities }, (_, density) => {
      const all = senones.map((senone) => source.mixtureWeights.weight(stream, density, senone));
      return roundMantissa((mean(all) / speech.length) * shareScale, weightBits);
    });
  });
  writeAffine(writer, 1, weights.length, weights, [tuning.shareFloor * shareScale]);
}

/**
 * Any senone: the mean likelihood of all that are no filler's, which is much that of the likeliest. No phrase can fit
 * much better, and only what was really said fits nearly as well; noise it fits too well.
 */
function writeAnySenone(writer: KaldiWriter, source: AcousticSource, layout: OutputLayout): void {
  const isCounted = layout.groups.flatMap(({ codebooks, senones, slots }) =>
    codebooks.flatMap((codebook, block) =>
      Array.from(
        { length: slots },
        (_, slot) => slot < (senones[block]?.length ?? 0) && !source.phones.isFiller(codebook),
      ),
    ),
  );
  const share = roundMantissa(1 / isCounted.filter(Boolean).length, weightBits);
  writeAffine(
    writer,
    1,
    isCounted.length,
    isCounted.map((counted) => (counted ? share : 0)),
    [0],
  );
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
