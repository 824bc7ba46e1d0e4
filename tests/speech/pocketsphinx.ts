/** The reference decoder: Debian's PocketSphinx, the same acoustic parameters, a strict grammar of one phrase. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { debianModelFolder } from '../../audio/command-model/acoustic-source.ts';
import type { Pronunciation } from '../../audio/command-model/sphinx-dictionary.ts';
import { sampleRate } from './voices.ts';
import { writeWav } from './wav.ts';

/** @returns what it heard in each clip: one of the phrases, or '' for none. */
export function pocketSphinxHears(
  clips: readonly Float32Array[],
  phrases: readonly string[],
  pronounce: (word: string) => readonly Pronunciation[],
): readonly string[] {
  const folder = mkdtempSync(join(tmpdir(), 'pocketsphinx-'));
  try {
    const at = (name: string) => join(folder, name);
    clips.forEach((samples, i) => {
      writeWav(at(`${i}.wav`), { sampleRate, samples });
    });
    const words = [...new Set(phrases.flatMap((phrase) => phrase.split(' ')))];
    const dictionary = words.flatMap((word) =>
      pronounce(word).map((phones, i) => `${word}${i === 0 ? '' : `(${i + 1})`} ${phones.join(' ')}`),
    );
    writeFileSync(at('words.dict'), `${dictionary.join('\n')}\n`);
    writeFileSync(
      at('phrases.jsgf'),
      `#JSGF V1.0;\ngrammar phrases;\npublic <phrase> = ${phrases.join(' | ')};\n`,
    );
    writeFileSync(at('clips.ctl'), `${clips.map((_, i) => i).join('\n')}\n`);
    const options = {
      hmm: join(debianModelFolder, 'en-us'),
      dict: at('words.dict'),
      jsgf: at('phrases.jsgf'),
      ctl: at('clips.ctl'),
      cepdir: folder,
      cepext: '.wav',
      adcin: 'yes',
      adchdr: '44',
      hyp: at('heard.txt'),
      logfn: at('log.txt'),
    };
    execFileSync(
      'pocketsphinx_batch',
      Object.entries(options).flatMap(([name, value]) => [`-${name}`, value]),
    );
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
