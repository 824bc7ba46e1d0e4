/** Clips of synthetic speech, kept between runs: the same voice says the same text the same way. */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Voice } from './voices.ts';
import { readWav } from './wav.ts';

/** Of every clip and every scene: the ears' rate. */
export const sampleRate = 16_000;

/** Clips are kept here between runs. */
export const keptFolder = join(tmpdir(), 'knotwright-spoken');

/** Named by all that makes the sound. */
function fileOf(voice: Voice, text: string): string {
  const { engine, id, tempo = 1, pitch = 1 } = voice;
  const made = JSON.stringify([engine, id, tempo, pitch, text]);
  return join(keptFolder, `${createHash('sha256').update(made).digest('hex').slice(0, 24)}.wav`);
}

/**
 * Speaks each text. @returns the sound at 16 kHz with the silence around it cut, in the order of the texts.
 * @throws when a synthesiser is missing or fails
 */
export function speak(voice: Voice, texts: readonly string[]): readonly Float32Array[] {
  mkdirSync(keptFolder, { recursive: true });
  const missing = [...new Set(texts)].filter((text) => !existsSync(fileOf(voice, text)));
  if (missing.length > 0) synthesise(voice, missing);
  return texts.map((text) => withoutEdges(readWav(fileOf(voice, text)).samples));
}

/** Speaks a text. */
export function spoken(voice: Voice, text: string): Float32Array {
  return speak(voice, [text])[0] as Float32Array;
}

function synthesise(voice: Voice, texts: readonly string[]): void {
  // Beside the clips, so that a finished one is moved into place in one step and two runs do not meet.
  const folder = mkdtempSync(join(keptFolder, 'making-'));
  try {
    const raw = (i: number) => join(folder, `${i}.raw.wav`);
    switch (voice.engine) {
      case 'flite':
        for (const [i, text] of texts.entries()) run('flite', ['-voice', voice.id, '-t', text, '-o', raw(i)]);
        break;
      case 'espeak':
        for (const [i, text] of texts.entries()) run('espeak-ng', ['-v', voice.id, '-w', raw(i), text]);
        break;
      case 'festival': {
        const lines = texts.map(
          (text, i) => `(utt.save.wave (utt.synth (Utterance Text "${text}")) "${raw(i)}" 'riff)`,
        );
        const script = join(folder, 'say.scm');
        writeFileSync(script, `(${voice.id})\n${lines.join('\n')}\n`);
        run('festival', ['--batch', script]);
        break;
      }
      default:
        voice.engine satisfies never;
    }
    const { tempo = 1, pitch = 1 } = voice;
    const manner = tempo === 1 && pitch === 1 ? [] : ['speed', `${pitch}`, 'tempo', '-s', `${tempo / pitch}`];
    for (const [i, text] of texts.entries()) {
      const made = join(folder, `${i}.wav`);
      run('sox', ['-D', '-G', raw(i), '-b', '16', '-c', '1', made, ...manner, 'rate', `${sampleRate}`]);
      renameSync(made, fileOf(voice, text));
    }
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function run(command: string, args: readonly string[]): void {
  try {
    execFileSync(command, args, { stdio: ['ignore', 'ignore', 'pipe'] });
  } catch (error) {
    throw new Error(`${command} failed; tests/debian.ts lists the packages that the voices need.`, {
      cause: error,
    });
  }
}

/** Cuts what is more than 40 dB under the loudest 10 ms from both ends. */
export function withoutEdges(samples: Float32Array): Float32Array {
  const frame = sampleRate / 100;
  const energies = Array.from({ length: Math.floor(samples.length / frame) }, (_, i) =>
    samples.subarray(i * frame, (i + 1) * frame).reduce((sum, sample) => sum + sample * sample, 0),
  );
  const loudest = Math.max(...energies);
  const audible = (energy: number) => energy > loudest * 1e-4;
  const first = energies.findIndex(audible);
  const last = energies.findLastIndex(audible);
  return samples.slice(first * frame, (last + 1) * frame);
}
