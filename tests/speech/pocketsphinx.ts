/** The reference decoder: Debian's PocketSphinx, the same acoustic parameters, a strict grammar. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { debianModelFolder } from '../../audio/command-model/acoustic-source.ts';
import type { Pronunciation } from '../../audio/command-model/sphinx-dictionary.ts';
import { writeWav } from './wav.ts';

/** What it is to hear: one of the phrases, or any number of the words in a row. */
export interface StrictGrammar {
  readonly phrases: readonly string[];
  readonly words: readonly string[];
}

/** @returns what it heard in each clip: one of the phrases, some of the words, or '' for none. */
export function pocketSphinxHears(
  clips: readonly Float32Array[],
  { phrases, words }: StrictGrammar,
  pronounce: (word: string) => readonly Pronunciation[],
): readonly string[] {
  const folder = mkdtempSync(join(tmpdir(), 'pocketsphinx-'));
  try {
    const at = (name: string) => join(folder, name);
    for (const [i, samples] of clips.entries()) writeWav(at(`${i}.wav`), { sampleRate: 16_000, samples });
    const vocabulary = [...new Set([...phrases, ...words].flatMap((phrase) => phrase.split(' ')))];
    const dictionary = vocabulary.flatMap((word) =>
      pronounce(word).map((phones, i) => `${word}${i === 0 ? '' : `(${i + 1})`} ${phones.join(' ')}`),
    );
    writeFileSync(at('words.dict'), `${dictionary.join('\n')}\n`);
    const inARow = words.length > 0 ? [`( ${words.join(' | ')} ) +`] : [];
    writeFileSync(
      at('heard.jsgf'),
      `#JSGF V1.0;\ngrammar heard;\npublic <heard> = ${[...phrases, ...inARow].join(' | ')};\n`,
    );
    writeFileSync(at('clips.ctl'), `${clips.map((_, i) => i).join('\n')}\n`);
    const options = {
      hmm: join(debianModelFolder, 'en-us'),
      dict: at('words.dict'),
      jsgf: at('heard.jsgf'),
      ctl: at('clips.ctl'),
      cepdir: folder,
      cepext: '.wav',
      adcin: 'yes',
      adchdr: '44',
      hyp: at('heard.txt'),
      logfn: at('log.txt'),
    };
    try {
      execFileSync(
        'pocketsphinx_batch',
        Object.entries(options).flatMap(([name, value]) => [`-${name}`, value]),
      );
    } catch (cause) {
      const complaint = readFileSync(at('log.txt'), 'utf8').match(/^(ERROR|FATAL).*$/gm);
      throw new Error(`PocketSphinx failed: ${complaint?.join(' ') ?? 'it left no reason'}`, { cause });
    }
    // A line reads "the words (clip score)".
    const heard = new Map<number, string>();
    for (const line of readFileSync(at('heard.txt'), 'utf8').split('\n')) {
      const match = /^(.*?)\s*\((\d+) \S+\)$/.exec(line);
      if (match) heard.set(Number(match[2]), (match[1] ?? '').trim());
    }
    return clips.map((_, i) => heard.get(i) ?? '');
  } finally {
    rmSync(folder, { recursive: true });
  }
}
