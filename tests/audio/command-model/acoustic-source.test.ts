import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  debianModelFolder,
  readAcousticSource,
  readStartingMean,
} from '../../../audio/command-model/acoustic-source.ts';
import { wordPosition } from '../../../audio/command-model/sphinx-phone-definitions.ts';

const source = readAcousticSource();

describe('the published acoustic model', () => {
  it('has 42 codebooks of 128 densities in three streams of 13', () => {
    for (const parameters of [source.means, source.variances]) {
      expect(parameters.codebooks).toBe(42);
      expect(parameters.densities).toBe(128);
      expect(parameters.streamLengths).toEqual([13, 13, 13]);
    }
  });

  // A density that training never used has none, and is floored.
  it('has no negative variances', () => {
    for (let codebook = 0; codebook < 42; codebook++) {
      for (let stream = 0; stream < 3; stream++) {
        for (let density = 0; density < 128; density++) {
          expect(Math.min(...source.variances.vector(codebook, stream, density))).toBeGreaterThanOrEqual(0);
        }
      }
    }
  });

  // A parse that slipped by one byte would mix senones: their weights would not sum to nearly one.
  it('has mixture weights that sum to one but for their quantisation', () => {
    const { mixtureWeights: weights } = source;
    expect(weights.senones).toBe(5126);
    for (let senone = 0; senone < weights.senones; senone += 97) {
      for (let stream = 0; stream < 3; stream++) {
        let sum = 0;
        for (let density = 0; density < 128; density++) sum += weights.weight(stream, density, senone);
        expect(sum).toBeGreaterThan(0.9);
        expect(sum).toBeLessThan(1.02);
      }
    }
  });

  it('stays in every state with a probability', () => {
    for (const stay of source.stayProbabilities.flat()) {
      expect(stay).toBeGreaterThan(0);
      expect(stay).toBeLessThan(1);
    }
  });

  // CMU's own converter (pocketsphinx_mdef_convert) prints the same file as text: every phone in every context.
  it('gives every phone in every context the senones that its makers print', () => {
    const folder = mkdtempSync(join(tmpdir(), 'mdef-'));
    try {
      const text = join(folder, 'mdef.txt');
      const binary = join(debianModelFolder, 'en-us/mdef');
      execFileSync('pocketsphinx_mdef_convert', ['-text', binary, text], { stdio: 'ignore' });
      const positions: Readonly<Record<string, 0 | 1 | 2 | 3>> = {
        b: wordPosition.begin,
        i: wordPosition.internal,
        e: wordPosition.end,
        s: wordPosition.single,
      };
      const number = (name: string | undefined) => source.phones.baseNumber(name ?? '') ?? -1;
      let checked = 0;
      for (const line of readFileSync(text, 'utf8').split('\n')) {
        const [base, left, right, place, , matrix, ...states] = line.trim().split(/\s+/);
        const position = positions[place ?? ''];
        if (position === undefined || states.length !== 4) continue;
        const model = source.phones.modelInContext(number(base), number(left), number(right), position);
        const senones = source.phones.senones(model.senoneSequence);
        if (model.transitionMatrix !== Number(matrix) || senones.join(' ') !== states.slice(0, 3).join(' ')) {
          expect.fail(
            `${line.trim()} reads as matrix ${model.transitionMatrix}, senones ${senones.join(' ')}`,
          );
        }
        checked++;
      }
      expect(checked).toBe(137_053);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('takes the model beside silence for a context that training never met', () => {
    const { phones } = source;
    const [zh, silence] = [phones.baseNumber('ZH') ?? -1, phones.baseNumber('SIL') ?? -1];
    const unmet = phones.modelInContext(zh, zh, zh, wordPosition.single);
    expect(unmet).toEqual(phones.modelInContext(zh, silence, silence, wordPosition.single));
  });

  it('pronounces in more than one way where people do', () => {
    expect(source.dictionary.get('the')).toEqual([
      ['DH', 'AH'],
      ['DH', 'IY'],
    ]);
  });

  it('says in one line what to install where it is missing', () => {
    expect(() => readAcousticSource(join(tmpdir(), 'nothing-here'))).toThrow(
      /install Debian's package pocketsphinx-en-us/,
    );
  });

  it('refuses feature parameters without a starting mean', () => {
    expect(() => readStartingMean('-lowerf 130\n')).toThrow(/-cmninit/);
  });
});
