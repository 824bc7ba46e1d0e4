import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Graph, writeVectorGraph } from '../../../audio/command-model/openfst-vector.ts';
import { packFieldModel } from '../../../audio/field-model/pack-field-model.ts';
import { readFieldModelIndex } from '../../../audio/field-model/packed-field-model.ts';
import { SMALL_ENGLISH } from '../../../audio/field-model/published-archive.ts';
import { withOutputSymbols, zipped } from './stand-in.ts';

const STILL_WORKS = 'Nothing was changed: the app goes on with the speech model it has.';

/** A model that could be packed, though not loaded. */
const files: Readonly<Record<string, Uint8Array>> = {
  'am/final.mdl': new Uint8Array(100),
  'conf/mfcc.conf': new TextEncoder().encode('--sample-frequency=16000\n'),
  'conf/model.conf': new TextEncoder().encode('--beam=10\n--frame-subsampling-factor=3\n'),
  'graph/HCLr.fst': new Uint8Array(10),
  'graph/Gr.fst': withOutputSymbols(writeVectorGraph(new Graph()), [
    ['<eps>', 0],
    ['[unk]', 1],
    ['stop', 2],
  ]),
};

let folder: string;
let archive: string;
let output: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'field-model-'));
  archive = join(folder, 'downloaded.zip');
  output = join(folder, 'public');
});
afterEach(() => rmSync(folder, { recursive: true }));

/** Packs a zip of these files as if it were the published one. */
function pack(changed: Readonly<Record<string, Uint8Array | undefined>> = {}) {
  const kept = Object.entries({ ...files, ...changed }).flatMap(([path, content]) =>
    content === undefined ? [] : [[path, content] as const],
  );
  const { zip, published } = zipped(Object.fromEntries(kept));
  writeFileSync(archive, zip);
  return packFieldModel(archive, published, output);
}

describe('an archive that cannot be packed', () => {
  it.each<[string, () => void, string]>([
    ['is not there', () => {}, `There is no file`],
    [
      'is too short',
      () => writeFileSync(archive, new Uint8Array(1_000)),
      'it has 1000 bytes instead of 41205931. Download it again.',
    ],
  ])('%s: says so and what still works', (_, prepare, sentence) => {
    prepare();
    const outcome = packFieldModel(archive, SMALL_ENGLISH, output);
    expect(outcome).toMatchObject({ ok: false, sentence: expect.stringContaining(sentence) });
    expect(outcome).toMatchObject({ sentence: expect.stringContaining(archive) });
    expect(outcome).toMatchObject({ sentence: expect.stringContaining(STILL_WORKS) });
    expect(readdirSync(folder)).not.toContain('public');
  });

  it('has the right size and other bytes', () => {
    const { zip, published } = zipped(files);
    writeFileSync(
      archive,
      zip.map((byte, i) => (i === 50 ? byte ^ 1 : byte)),
    );
    expect(packFieldModel(archive, published, output)).toMatchObject({
      ok: false,
      sentence: expect.stringContaining('its size is right but its SHA-256 is not'),
    });
  });

  it('is no zip', () => {
    const bytes = new TextEncoder().encode('not a zip');
    writeFileSync(archive, bytes);
    // SHA-256 by coreutils: printf 'not a zip' | sha256sum
    const published = {
      ...SMALL_ENGLISH,
      bytes: bytes.length,
      sha256: 'a3989126344744ef800dbc88bf7e744853f3f2eac75c9ab3301f4e845ef22078',
    };
    expect(packFieldModel(archive, published, output)).toMatchObject({
      ok: false,
      sentence: expect.stringContaining('It is not a zip archive.'),
    });
  });

  it.each<[string, Readonly<Record<string, Uint8Array | undefined>>, string]>([
    ['no acoustic model', { 'am/final.mdl': undefined }, 'am/final.mdl is missing'],
    ['no graphs', { 'graph/HCLr.fst': undefined, 'graph/Gr.fst': undefined }, 'graph/HCLr.fst, graph/Gr.fst'],
    ['a finished graph', { 'graph/HCLG.fst': new Uint8Array(1) }, 'cannot be given a list of phrases'],
    ['a broken graph', { 'graph/Gr.fst': new Uint8Array(80) }, 'graph/Gr.fst is not an OpenFst graph.'],
    ['no words', { 'graph/Gr.fst': writeVectorGraph(new Graph()) }, 'names its words'],
    [
      'no word for other talk',
      { 'graph/Gr.fst': withOutputSymbols(writeVectorGraph(new Graph()), [['stop', 1]]) },
      'no word [unk]',
    ],
  ])('has %s in it', (_, changed, sentence) => {
    expect(pack(changed)).toMatchObject({ ok: false, sentence: expect.stringContaining(sentence) });
    expect(readdirSync(folder)).not.toContain('public');
  });

  it('leaves the model packed before where it is', () => {
    pack();
    const before = readdirSync(output);
    writeFileSync(archive, 'short');
    packFieldModel(archive, SMALL_ENGLISH, output);
    expect(readdirSync(output)).toEqual(before);
  });
});

describe('a packed archive', () => {
  it('lies in one file named by its hash beside a table of contents, in the place of an older one', () => {
    const older = pack({ README: new Uint8Array(1) });
    const outcome = pack();
    if (!outcome.ok || !older.ok) throw new Error('It was not packed.');
    expect(older.packed.fileName).not.toBe(outcome.packed.fileName);
    expect(readdirSync(output).sort()).toEqual([outcome.packed.fileName, 'index.json']);
    expect(readFieldModelIndex(JSON.parse(readFileSync(join(output, 'index.json'), 'utf8')))).toEqual(
      outcome.packed,
    );
    expect(readFileSync(join(output, outcome.packed.fileName)).length).toBe(outcome.packed.bytes);
  });

  it('is the same, byte for byte, when it is packed again', () => {
    expect(pack()).toEqual(pack());
  });

  it('takes the length of a step from the model itself', () => {
    expect(pack()).toMatchObject({ packed: { timeScale: 1 } });
    const everyFrame = new TextEncoder().encode('--beam=10\n');
    expect(pack({ 'conf/model.conf': everyFrame })).toMatchObject({ packed: { timeScale: 1 / 3 } });
  });
});

describe('the table of contents', () => {
  it('is none where a server answers with anything else', () => {
    for (const content of [undefined, '<!doctype html>', {}, { format: 2 }]) {
      expect(readFieldModelIndex(content)).toBeUndefined();
    }
  });
});
