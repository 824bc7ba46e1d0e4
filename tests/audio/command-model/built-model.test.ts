import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readAcousticSource } from '../../../audio/command-model/acoustic-source.ts';
import { builtModel } from '../../../audio/command-model/built.ts';
import { grammarVocabulary } from '../../../audio/command-model/grammar-vocabulary.ts';
import { packModel, vocabularyHash } from '../../../audio/command-model/packed-model.ts';
import { modelTuning } from '../../../audio/command-model/tuning.ts';
import { pronunciations } from '../../../grammar/pronunciations.ts';

const vocabulary = grammarVocabulary();
const folder = new URL('../../../public/model/', import.meta.url);

describe('the model that ships', () => {
  it('was made from the grammar as it is now (if this fails: npm run model)', () => {
    expect(builtModel.vocabularySha256).toBe(vocabularyHash(vocabulary));
  });

  it('is the one file that the record names, with the licence beside it', () => {
    expect(readdirSync(folder).sort()).toEqual(['LICENSE', builtModel.fileName]);
    const bytes = readFileSync(new URL(builtModel.fileName, folder));
    expect(bytes.length).toBe(builtModel.bytes);
    expect(createHash('sha256').update(bytes).digest('hex')).toBe(builtModel.sha256);
    expect(builtModel.fileName).toContain(builtModel.sha256.slice(0, 8));
  });

  // A build takes ten seconds of a free processor, and minutes of a busy one.
  it('comes out the same, byte for byte, when it is built again', () => {
    const again = packModel(readAcousticSource(), vocabulary, modelTuning);
    expect(again.sha256).toBe(builtModel.sha256);
  }, 300_000);

  it('stays small enough to be fetched once and kept', () => {
    expect(builtModel.bytes).toBeLessThan(4_000_000);
  });

  it('has a vocabulary hash that sees a change and not an order', () => {
    const reversed = { ...vocabulary, phrases: [...vocabulary.phrases].reverse() };
    expect(vocabularyHash(reversed)).toBe(vocabularyHash(vocabulary));
    const more = { ...vocabulary, phrases: [...vocabulary.phrases, 'one more'] };
    expect(vocabularyHash(more)).not.toBe(vocabularyHash(vocabulary));
    const lessEager = { ...vocabulary, eager: vocabulary.eager.slice(1) };
    expect(vocabularyHash(lessEager)).not.toBe(vocabularyHash(vocabulary));
    const fewerDigits = { ...vocabulary, digits: vocabulary.digits.slice(1) };
    expect(vocabularyHash(fewerDigits)).not.toBe(vocabularyHash(vocabulary));
    const other = { ...vocabulary, pronunciations: { ...pronunciations, knotter: ['N AA T AH'] } };
    expect(vocabularyHash(other)).not.toBe(vocabularyHash(vocabulary));
  });
});
