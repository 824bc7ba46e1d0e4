/** Recordings of real people that Debian has, and a collection beside the project that a bench may use where it is. */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, renameSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { keptFolder, sampleRate } from './speak.ts';
import { readWav } from './wav.ts';

export interface Recording {
  readonly speaker: string;
  /** What is said; undefined where it is some sentence that is no phrase. */
  readonly text: string | undefined;
  readonly file: string;
  /** No room is to be heard in it. */
  readonly isStudio: boolean;
}

/** One speaker at 8 kHz: Digium's prompts, Debian package asterisk-core-sounds-en-wav. */
const prompts = '/usr/share/asterisk/sounds/en_US_f_Allison';
/** Debian package pocketsphinx-testdata: sentences of a novel, cards being called, a robot being sent. */
const testData = '/usr/share/pocketsphinx/test/data';
/** One word a clip by many people on their own telephones and computers: Speech Commands, P. Warden, 2017, CC BY 4.0. */
const besideTheProject = fileURLToPath(new URL('../../../shared/real-speech', import.meta.url));

const UNITS =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen'.split(' ');
const TEENS = 'sixteen seventeen eighteen nineteen'.split(' ');
const TENS = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');

/** Whole numbers said alone. */
export const recordedNumbers: readonly Recording[] = [
  ...[...UNITS, ...TEENS].map((text, number) => [text, number] as const),
  ...TENS.map((text, i) => [text, 20 + 10 * i] as const),
].map(([text, number]) => ({
  speaker: 'prompts',
  isStudio: true,
  text,
  file: join(prompts, 'digits', `${number}.wav`),
}));

/** No speech, single letters, and what might be a phrase of ours. */
const noSentences = /^(beep|.*tone|silence|letters|phonetic|digits|vm-(no|next|repeat|press|last|first))/;

/** Sentences and short remarks that are no phrases. */
export const recordedTalk: readonly Recording[] = [
  ...readdirSync(prompts)
    .filter((name) => name.endsWith('.wav') && !noSentences.test(name))
    .map((name) => ({ speaker: 'prompts', isStudio: true, text: undefined, file: join(prompts, name) })),
  ...readdirSync(join(testData, 'librivox'))
    .filter((name) => name.endsWith('.wav'))
    .map((name) => ({
      speaker: 'novel',
      isStudio: false,
      text: undefined,
      file: join(testData, 'librivox', name),
    })),
  ...readdirSync(join(testData, 'cards'))
    .filter((name) => name.endsWith('.wav'))
    .map((name) => ({
      speaker: 'cards',
      isStudio: false,
      text: undefined,
      file: join(testData, 'cards', name),
    })),
  ...['goforward', 'something'].map((name) => ({
    speaker: 'robot',
    isStudio: false,
    text: undefined,
    file: join(testData, `${name}.raw`),
  })),
];

/** Single words, each as its folder says; none where the collection is not there. */
export function recordedWords(): readonly Recording[] {
  if (!existsSync(besideTheProject)) return [];
  return readdirSync(besideTheProject, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .flatMap(({ name: text }) =>
      readdirSync(join(besideTheProject, text))
        .filter((file) => file.endsWith('.wav'))
        .sort()
        .map((file) => ({
          speaker: file.split('_')[0] ?? file,
          isStudio: false,
          text,
          file: join(besideTheProject, text, file),
        })),
    );
}

/** The recording at the ears' rate, silences and all. @throws when sox cannot read it */
export function soundOf({ file }: Recording): Float32Array {
  mkdirSync(keptFolder, { recursive: true });
  const kept = join(keptFolder, `${createHash('sha256').update(file).digest('hex').slice(0, 24)}.wav`);
  if (!existsSync(kept)) {
    const raw = file.endsWith('.raw')
      ? ['-t', 'raw', '-r', '16000', '-e', 'signed', '-b', '16', '-c', '1']
      : [];
    const made = `${kept}.${process.pid}.wav`;
    execFileSync('sox', ['-D', '-G', ...raw, file, '-b', '16', '-c', '1', made, 'rate', `${sampleRate}`]);
    renameSync(made, kept);
  }
  return readWav(kept).samples;
}

/** What to call it in a report. */
export function titleOf({ text, file }: Recording): string {
  return text ?? basename(file).replace(/\.\w+$/, '');
}
