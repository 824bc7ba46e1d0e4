import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeTar } from '../../audio/command-model/tar-archive.ts';
import type { Recogniser } from '../../audio/ears/recogniser.ts';
import { marginOf } from '../../audio/ears/utterance.ts';
import { readUtterance } from '../../audio/ears/utterance-reader.ts';
import { outputSymbols } from '../../audio/field-model/graph-words.ts';
import { packFieldModel } from '../../audio/field-model/pack-field-model.ts';
import { fieldSpeechModel } from '../../audio/field-model/packed-field-model.ts';
import { recogniserList } from '../../grammar/compile.ts';
import type { Expecting } from '../../grammar/expecting.ts';
import { SYMPTOM_MEANINGS, taughtForm } from '../../grammar/lexicon.ts';
import { type Understanding, understand } from '../../grammar/understand.ts';
import { LACKING, standInFiles, zipped } from '../audio/field-model/stand-in.ts';
import { recogniserOver } from './node-recogniser.ts';
import { makeScene, quietRoom } from './scenes.ts';
import { spoken } from './speak.ts';
import { voices } from './voices.ts';
import { type LoadedModel, loadVoskModel } from './vosk-in-node.ts';

/**
 * The field model from the published zip to an understood answer, with a stand-in for the public archive: packed, loaded
 * by the real library, and spoken to through the lists of the states.
 */

const files = standInFiles();
const words = outputSymbols(files['graph/Gr.fst'] ?? new Uint8Array(), 'Gr.fst') ?? [];
const vocabulary = new Set(words.map(([word]) => word));

let folder: string;
let loaded: LoadedModel;
let packed: Extract<ReturnType<typeof packFieldModel>, { ok: true }>;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'field-model-'));
  const { zip, published } = zipped(files);
  writeFileSync(join(folder, published.name), zip);
  const outcome = packFieldModel(join(folder, published.name), published, join(folder, 'public'));
  if (!outcome.ok) throw new Error(outcome.sentence);
  packed = outcome;
  loaded = await loadVoskModel(readFileSync(join(folder, 'public', outcome.packed.fileName)));
});
afterAll(() => {
  loaded?.close();
  rmSync(folder, { recursive: true });
});

function recogniserOf({ model }: LoadedModel): Recogniser {
  return {
    ...recogniserOver(model, { decodedSeconds: 0, cpuSeconds: 0 }),
    model: fieldSpeechModel(packed.packed, ''),
    unknownIn: (list) => list.flatMap((entry) => entry.split(' ')).filter((word) => !vocabulary.has(word)),
  };
}

/** What the app makes of a sentence said in a quiet room. */
async function heard(
  text: string,
  expecting: Expecting,
  voiceName: string,
  over = loaded,
): Promise<Understanding> {
  const voice = voices.find(({ name }) => name === voiceName);
  if (!voice) throw new Error(`There is no voice ${voiceName}.`);
  const { samples, start, end } = makeScene(spoken(voice, text), quietRoom, 1);
  const reading = await readUtterance(recogniserOf(over), recogniserList(expecting), samples, start, end)
    ?.reading;
  if (!reading) throw new Error('The list could not be listened for.');
  const said = reading.words.map(({ word }) => word).join(' ');
  return understand(said, expecting, marginOf(reading.words, reading.span));
}

describe('the archive as it is published', () => {
  it('has no list of words but the one inside Gr.fst, and the recogniser’s own OpenFst reads that', async () => {
    expect(Object.keys(files)).not.toContain('graph/words.txt');
    const inOneFolder = Object.entries(files).map(([path, content]) => ({ path: `model/${path}`, content }));
    const unpacked = await loadVoskModel(gzipSync(writeTar(inOneFolder)));
    try {
      const key = { meanings: ['lockout.keyInPocket'] } as const;
      const text = taughtForm('lockout.keyInPocket');
      expect(await heard(text, key, 'flite-slt', unpacked)).toMatchObject({ meaning: 'lockout.keyInPocket' });
    } finally {
      unpacked.close();
    }
  });
});

describe('the packed field model', () => {
  it('tells which words of the grammar it lacks', () => {
    expect(packed.coverage.lackingWords).toEqual(LACKING);
  });

  const symptoms: Expecting = { meanings: SYMPTOM_MEANINGS };
  const whichSide: Expecting = { meanings: ['which.left', 'which.right', 'which.both', 'which.alternates'] };
  const theKey: Expecting = { meanings: ['lockout.keyInPocket'] };
  const length: Expecting = { meanings: [], value: { kind: 'measurement', dimension: 'length' } };
  const count: Expecting = { meanings: [], value: { kind: 'count' } };

  it.each<[string, Expecting, string]>([
    ['the left one keeps letting go', symptoms, 'flite-slt'],
    ['knots come loose on the wagon', symptoms, 'flite-rms'],
    [taughtForm('which.both'), whichSide, 'flite-kal16'],
    [taughtForm('why'), whichSide, 'flite-awb'],
    [taughtForm('lockout.keyInPocket'), theKey, 'flite-rms'],
    [taughtForm('stop'), theKey, 'flite-slt'],
    ['three quarters of an inch', length, 'flite-slt'],
    ['twenty two', count, 'flite-rms'],
  ])('understands "%s" through the list of a state', async (text, expecting, voice) => {
    const meant = understand(text, expecting);
    expect(meant.outcome).toBe('understood');
    expect(await heard(text, expecting, voice)).toEqual(meant);
  });

  it.each<[string, string]>([
    ['the key is not in my pocket', 'flite-slt'],
    ['the key is not in my pocket', 'flite-rms'],
    ['the key is in the tractor', 'flite-slt'],
    ['in my pocket', 'flite-rms'],
    ['did you feed the dog this morning', 'flite-slt'],
    ['my cousin bought a yellow house', 'flite-rms'],
  ])('takes "%s" for no step of the lockout', async (text, voice) => {
    expect(await heard(text, theKey, voice)).not.toMatchObject({
      outcome: 'understood',
      meaning: 'lockout.keyInPocket',
    });
  });

  it('refuses a phrase with a word that it lacks, and goes on hearing the rest of the list', async () => {
    const { outcome } = await heard('knots pile up on the billhook', symptoms, 'flite-slt');
    expect(outcome).not.toBe('understood');
  });
});
