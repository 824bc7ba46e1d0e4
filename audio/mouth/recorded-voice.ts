import type { Say } from '../../grammar/say.ts';
import type { ClipLibrary, PlayableClip } from './clip-library.ts';
import { gapAfterS } from './joining.ts';
import { utteranceState } from './utterance-state.ts';
import { SpeechFault, type SpeechTrouble, type Voice } from './voice.ts';

/** Time between deciding to speak and the first sample, seconds: one audio block and a margin. */
const LEAD_S = 0.015;
/** Fade when cut short, seconds: silent at once to the ear, without a click. */
const FADE_S = 0.015;
/** How long the browser may take to give sound when asked, milliseconds. */
const RESUME_WAIT_MS = 1000;

/**
 * The recorded voice, through Web Audio. A whole Say is decoded before its first sample sounds, so no gap can open in
 * the middle of a value and a missing clip is known before anything is said.
 * @param context plays the clips; a browser lets it run only after the first touch
 * @param output where the sound goes, e.g. a gain node for the volume
 * @param pace how much faster than recorded, asked anew for every Say
 */
export function recordedVoice(
  context: AudioContext,
  output: AudioNode,
  library: ClipLibrary,
  pace: () => number,
  onTrouble: (trouble: SpeechTrouble) => void,
): Voice {
  let cutCurrent = () => {};
  return {
    speak(say) {
      cutCurrent();
      const gain = context.createGain();
      gain.connect(output);
      const sources: AudioBufferSourceNode[] = [];
      const state = utteranceState((how) => {
        context.removeEventListener('statechange', onStateChange);
        silence(context, gain, sources, how === 'done' ? 0 : FADE_S);
      });
      const fail = (error: unknown) => {
        if (state.over()) return;
        state.end('failed');
        onTrouble({ kind: kindOf(error), say, message: messageOf(error) });
      };
      // An interrupted context stops its clock: no clip would ever end, and the turn would hang.
      const onStateChange = () => {
        if (!isRunning(context)) fail(new SpeechFault('soundBlocked', 'The sound was interrupted.'));
      };
      const begin = async () => {
        if (say.length === 0) throw new SpeechFault('nothingToSay', 'There is nothing to say.');
        const spoken = pace();
        const clips = await Promise.all(say.map((fragment) => library.clip(fragment, spoken)));
        await running(context);
        if (state.over()) return;
        context.addEventListener('statechange', onStateChange);
        const startS = context.currentTime + LEAD_S;
        sources.push(...schedule(context, gain, say, clips, startS, spoken));
        sources.at(-1)?.addEventListener('ended', () => state.end('done'));
        const atMs = performance.now() + 1000 * (startS - context.currentTime + outputDelayS(context));
        setTimeout(() => !state.over() && state.start(atMs), Math.max(0, atMs - performance.now()));
      };
      cutCurrent = state.utterance.cut;
      begin().catch(fail);
      return state.utterance;
    },
    prepare(says) {
      for (const fragment of says.flat()) {
        // Trouble with a clip is reported when it is to be heard, not while it only might be.
        library.clip(fragment, pace()).catch(() => {});
      }
    },
  };
}

function schedule(
  context: AudioContext,
  into: AudioNode,
  say: Say,
  clips: readonly PlayableClip[],
  startS: number,
  pace: number,
): AudioBufferSourceNode[] {
  let atS = startS;
  return clips.map(({ buffer, speechStartS, speechS }, index) => {
    const source = context.createBufferSource();
    source.buffer = buffer;
    source.connect(into);
    source.start(atS, speechStartS, speechS);
    atS += speechS + gapAfterS(say[index] ?? '') / pace;
    return source;
  });
}

function silence(
  context: AudioContext,
  gain: GainNode,
  sources: AudioBufferSourceNode[],
  fadeS: number,
): void {
  const nowS = context.currentTime;
  gain.gain.setValueAtTime(1, nowS);
  gain.gain.linearRampToValueAtTime(0, nowS + fadeS);
  for (const source of sources) source.stop(nowS + fadeS);
  setTimeout(() => gain.disconnect(), 2000 * fadeS);
}

/** Resolves when the context runs. @throws SpeechFault where the browser does not let it */
async function running(context: AudioContext): Promise<void> {
  if (isRunning(context)) return;
  const timeout = new Promise((resolve) => setTimeout(resolve, RESUME_WAIT_MS));
  await Promise.race([context.resume().catch(() => {}), timeout]);
  if (!isRunning(context)) {
    throw new SpeechFault('soundBlocked', 'The browser gives no sound yet. Touch the screen once.');
  }
}

function isRunning(context: AudioContext): boolean {
  return context.state === 'running';
}

/** Delay behind the context's clock; Safari knows only the base latency, older browsers neither. */
function outputDelayS(context: AudioContext): number {
  return context.outputLatency || context.baseLatency || 0;
}

function kindOf(error: unknown): SpeechFault['kind'] {
  return error instanceof SpeechFault ? error.kind : 'badClip';
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
