import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seededRandom } from '../../flows/drill/seeded.ts';
import { drawn } from '../speech/random.ts';
import { wordErrorRate, wordErrors } from '../speech/word-errors.ts';

/** The outside judge: sclite of NIST's Speech Recognition Scoring Toolkit (Debian package sctk). */
const sclite = '/usr/lib/sctk/bin/sclite';
const vocabulary = ['both', 'ends', 'left', 'needle', 'not', 'the', 'twine'];

interface Pair {
  readonly said: readonly string[];
  readonly heard: readonly string[];
}

/** What was said, and that with words lost, put in and taken for others; a few heard from nowhere. */
function pairs(count: number): readonly Pair[] {
  const random = seededRandom(7);
  const words = (most: number) =>
    Array.from({ length: Math.floor(random() * (most + 1)) }, () => drawn(vocabulary, random));
  return Array.from({ length: count }, () => {
    const said = [drawn(vocabulary, random), ...words(7)];
    const garbled = said.flatMap((word) => {
      const chance = random();
      if (chance < 0.15) return [];
      if (chance < 0.3) return [drawn(vocabulary, random)];
      return chance < 0.4 ? [word, drawn(vocabulary, random)] : [word];
    });
    return { said, heard: random() < 0.1 ? words(8) : garbled };
  });
}

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'sclite-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Substitutions, deletions and insertions of each pair, in the order of the pairs. */
function judged(all: readonly Pair[]): readonly (readonly number[])[] {
  const transcript = (side: keyof Pair) =>
    all.map((pair, i) => `${pair[side].join(' ')} (speaker-${String(i).padStart(4, '0')})\n`).join('');
  const [reference, hypothesis] = [join(folder, 'said.trn'), join(folder, 'heard.trn')];
  writeFileSync(reference, transcript('said'));
  writeFileSync(hypothesis, transcript('heard'));
  const report = execFileSync(
    sclite,
    ['-r', reference, 'trn', '-h', hypothesis, 'trn', '-i', 'rm', '-o', 'pralign', 'stdout'],
    { encoding: 'utf8' },
  );
  return [...report.matchAll(/^Scores: \(#C #S #D #I\) \d+ (\d+) (\d+) (\d+)$/gm)].map((match) =>
    match.slice(1).map(Number),
  );
}

describe('word errors, by sclite', () => {
  it('counts the same substitutions, deletions and insertions for 300 pairs', () => {
    const all = pairs(300);
    const ours = all.map(({ said, heard }) => {
      const { substituted, deleted, inserted } = wordErrors(said, heard);
      return [substituted, deleted, inserted];
    });
    expect(ours).toEqual(judged(all));
  });

  it('gives the errors for each word spoken, over all together', () => {
    const all = [
      wordErrors(['both', 'ends'], ['both']),
      wordErrors(['the', 'needle'], ['the', 'left', 'needle']),
    ];
    expect(wordErrorRate(all)).toBe(0.5);
    expect(() => wordErrorRate([])).toThrow('No words were spoken');
  });
});
