/** Speaks phrases into files with the synthesisers that Debian packages; nothing spoken is ever committed. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { readWav } from './wav.ts';

export const sampleRate = 16_000;

interface Voice {
  readonly name: string;
  readonly engine: 'flite' | 'festival';
  /** The engine's own name for it. */
  readonly id: string;
}

/** Seven voices built from recordings of people (diphone, cluster-unit and statistical), all at least 16 kHz. */
export const voices: readonly Voice[] = [
  { name: 'flite-kal16', engine: 'flite', id: 'kal16' },
  { name: 'flite-awb', engine: 'flite', id: 'awb' },
  { name: 'flite-rms', engine: 'flite', id: 'rms' },
  { name: 'flite-slt', engine: 'flite', id: 'slt' },
  { name: 'festival-kal', engine: 'festival', id: 'voice_kal_diphone' },
  { name: 'festival-ked', engine: 'festival', id: 'voice_ked_diphone' },
  { name: 'festival-slt', engine: 'festival', id: 'voice_cmu_us_slt_arctic_hts' },
];

const fileOf = (folder: string, voice: Voice, text: string) =>
  join(folder, `${voice.name}--${text.replaceAll(/[^a-z0-9]/g, '_')}.wav`);

/** Speaks each text, keeps the files in `folder`, and gives the sound at 16 kHz with the silence around it cut. */
export function speak(folder: string, voice: Voice, texts: readonly string[]): readonly Float32Array[] {
  mkdirSync(folder, { recursive: true });
  const missing = [...new Set(texts)].filter((text) => !existsSync(fileOf(folder, voice, text)));
  if (missing.length > 0) {
    const raw = (text: string) => `${fileOf(folder, voice, text)}.raw.wav`;
    const run = (command: string, args: readonly string[]) => {
      try {
        execFileSync(command, args, { stdio: ['ignore', 'ignore', 'pipe'] });
      } catch (error) {
        throw new Error(`${command} failed; tests/debian.ts lists the packages that the voices need.`, {
          cause: error,
        });
      }
    };
    if (voice.engine === 'flite') {
      for (const text of missing) run('flite', ['-voice', voice.id, '-t', text, '-o', raw(text)]);
    } else {
      const script = join(folder, `${voice.name}.scm`);
      const lines = missing.map(
        (text) => `(utt.save.wave (utt.synth (Utterance Text "${text}")) "${raw(text)}" 'riff)`,
      );
      writeFileSync(script, `(${voice.id})\n${lines.join('\n')}\n`);
      run('festival', ['--batch', script]);
      rmSync(script);
    }
    for (const text of missing) {
      const made = `${fileOf(folder, voice, text)}.part.wav`;
      run('sox', ['-D', raw(text), '-r', String(sampleRate), '-b', '16', '-c', '1', made]);
      rmSync(raw(text));
      renameSync(made, fileOf(folder, voice, text));
    }
  }
  return texts.map((text) => withoutEdges(readWav(fileOf(folder, voice, text)).samples));
}

/** Cuts what is more than 40 dB under the loudest 10 ms from both ends. */
function withoutEdges(samples: Float32Array): Float32Array {
  const frame = sampleRate / 100;
  const energies = Array.from({ length: Math.floor(samples.length / frame) }, (_, i) =>
    samples.subarray(i * frame, (i + 1) * frame).reduce((sum, sample) => sum + sample * sample, 0),
  );
  const audible = (energy: number) => energy > Math.max(...energies) * 1e-4;
  const first = energies.findIndex(audible);
  const last = energies.findLastIndex(audible);
  return samples.slice(first * frame, (last + 1) * frame);
}
