import captureWorkletUrl from './capture-worklet.ts?worker&url';
import type { EarsFailure } from './failures.ts';
import type { SoundBlock } from './front-end.ts';
import type { FromFrontEnd, ToFrontEnd } from './front-end-worker.ts';

/**
 * What the browser may do to the sound on its way. All off: its gain and noise control move the levels that we measure, so that an
 * engine 5 dB under the voice, too loud by what is heard, passes for a good place (Chromium 156). They are of no use before our
 * own front end either: of 304 scenes 279 were right without, 272 with noise suppression, and in wind 77 and 69 of 80.
 */
export interface CaptureSettings {
  readonly echoCancellation: boolean;
  readonly noiseSuppression: boolean;
  readonly autoGainControl: boolean;
}

export const PLAIN_CAPTURE: CaptureSettings = {
  echoCancellation: false,
  noiseSuppression: false,
  autoGainControl: false,
};

const CAPTURE_SETTINGS = Object.keys(PLAIN_CAPTURE) as readonly (keyof CaptureSettings)[];

/** What a running microphone reports. */
export type MicrophoneEvent =
  /** The next block of sound, in order, and when its last sample came, on the page's clock. */
  | { readonly type: 'block'; readonly block: SoundBlock; readonly cameAtMs: number }
  | { readonly type: 'failed'; readonly failure: EarsFailure }
  /** Sound comes again after a mute or a stall. */
  | { readonly type: 'recovered' };

/** A microphone that is open. */
export interface Microphone {
  /** The rate the device really runs at, hertz. */
  readonly deviceRateHz: number;
  /** Whether the browser works on the sound though it was asked not to: how loud room and voice are cannot be known then. */
  readonly isAltered: boolean;
  /** Lets sound flow again after the browser suspended it. Call it from a tap. */
  resume(): Promise<void>;
  /** Closes it for good; the browser's recording mark goes out. */
  stop(): void;
}

export type OpenedMicrophone =
  | { readonly ok: true; readonly microphone: Microphone }
  | { readonly ok: false; readonly failure: EarsFailure };

/** What the worker that prepares the sound is called, so that it can be told from the recogniser's. */
export const FRONT_END = 'front-end';

/** No slice for this long and the microphone counts as stalled (a tablet's call or another app took the sound). */
const STALLED_AFTER_MS = 2_000;

/** Only exact zeros for this long and it counts as muted: a living microphone always has noise. */
const MUTED_AFTER_MS = 3_000;

/** Whether nothing more will come of this stream: the microphone has to be opened anew. */
export function isForGood({ kind }: EarsFailure): boolean {
  return kind === 'microphone-unplugged' || kind === 'front-end-died';
}

/** How long the browser may take to let the sound start before a tap is asked for. */
const START_WITHIN_MS = 1_000;

/**
 * Opens the microphone. Never rejects: whatever goes wrong is a typed failure.
 * @param listener gets blocks and later failures until {@link Microphone.stop}
 */
export async function openMicrophone(
  listener: (event: MicrophoneEvent) => void,
  settings: CaptureSettings = PLAIN_CAPTURE,
): Promise<OpenedMicrophone> {
  if (!window.isSecureContext) return { ok: false, failure: { kind: 'insecure-origin' } };
  if (navigator.mediaDevices?.getUserMedia === undefined || typeof AudioWorkletNode === 'undefined') {
    return { ok: false, failure: { kind: 'no-audio-support' } };
  }
  let stream: MediaStream;
  try {
    stream = await navigator.mediaDevices.getUserMedia({
      audio: { ...settings, channelCount: 1 },
      video: false,
    });
  } catch (error) {
    return { ok: false, failure: refusalOf(error) };
  }
  const track = stream.getAudioTracks()[0];
  const context = new AudioContext();
  try {
    await context.audioWorklet.addModule(captureWorkletUrl);
    if (track === undefined) throw new Error('the stream has no sound');
    const microphone = capture(stream, track, context, listener, isAltered(track, settings));
    void context.resume();
    if (!(await startsWithin(context, START_WITHIN_MS)))
      listener({ type: 'failed', failure: { kind: 'needs-a-tap' } });
    return { ok: true, microphone };
  } catch (error) {
    for (const open of stream.getTracks()) open.stop();
    void context.close();
    return { ok: false, failure: { kind: 'capture-failed', detail: messageOf(error) } };
  }
}

/** Joins the open stream to the worklet and watches over it. */
function capture(
  stream: MediaStream,
  track: MediaStreamTrack,
  context: AudioContext,
  listener: (event: MicrophoneEvent) => void,
  isAltered: boolean,
): Microphone {
  const source = context.createMediaStreamSource(stream);
  const node = new AudioWorkletNode(context, 'knotwright-capture', { numberOfInputs: 1, numberOfOutputs: 0 });
  const frontEnd = new Worker(new URL('./front-end-worker.ts', import.meta.url), {
    type: 'module',
    name: FRONT_END,
  });
  const toFrontEnd = (message: ToFrontEnd, transfer: Transferable[] = []): void =>
    frontEnd.postMessage(message, transfer);
  let isStopped = false;
  let trouble: EarsFailure | undefined;
  let zerosMs = 0;
  let lastSliceAt = performance.now();

  const fail = (failure: EarsFailure): void => {
    if (isStopped || trouble?.kind === failure.kind || (trouble && isForGood(trouble))) return;
    trouble = failure;
    listener({ type: 'failed', failure });
  };
  const recover = (): void => {
    if (isStopped || trouble === undefined || isForGood(trouble)) return;
    trouble = undefined;
    listener({ type: 'recovered' });
  };
  const takeSlice = (slice: Float32Array<ArrayBuffer>): void => {
    if (isStopped) return;
    lastSliceAt = performance.now();
    if (slice.every((sample) => sample === 0)) {
      zerosMs += (slice.length * 1000) / context.sampleRate;
      if (zerosMs >= MUTED_AFTER_MS) fail({ kind: 'microphone-muted' });
    } else {
      zerosMs = 0;
      if (!track.muted) recover();
    }
    toFrontEnd({ type: 'slice', samples: slice, cameAtMs: lastSliceAt }, [slice.buffer]);
  };
  const onFrontEndError = ({ message }: ErrorEvent): void =>
    fail({ kind: 'front-end-died', detail: message || 'no reason given' });
  const onEnded = (): void => fail({ kind: 'microphone-unplugged' });
  const onMute = (): void => fail({ kind: 'microphone-muted' });
  const onStateChange = (): void => {
    // Also 'interrupted' on iPads, which the types do not name: a call or another app holds the sound.
    if (context.state !== 'running' && context.state !== 'closed') fail({ kind: 'needs-a-tap' });
  };
  const watchdog = setInterval(() => {
    const isHidden = document.visibilityState === 'hidden';
    if (context.state === 'running' && !isHidden && performance.now() - lastSliceAt > STALLED_AFTER_MS) {
      fail({ kind: 'microphone-stalled' });
    }
  }, STALLED_AFTER_MS / 2);

  toFrontEnd({ type: 'open', deviceRateHz: context.sampleRate });
  frontEnd.addEventListener('message', ({ data: { blocks, cameAtMs } }: MessageEvent<FromFrontEnd>) => {
    for (const block of blocks) if (!isStopped) listener({ type: 'block', block, cameAtMs });
  });
  frontEnd.addEventListener('error', onFrontEndError);
  node.port.onmessage = (message: MessageEvent<Float32Array<ArrayBuffer>>) => takeSlice(message.data);
  track.addEventListener('ended', onEnded);
  track.addEventListener('mute', onMute);
  context.addEventListener('statechange', onStateChange);
  source.connect(node);

  return {
    deviceRateHz: context.sampleRate,
    isAltered,
    async resume() {
      await context.resume();
      lastSliceAt = performance.now();
    },
    stop() {
      if (isStopped) return;
      isStopped = true;
      clearInterval(watchdog);
      track.removeEventListener('ended', onEnded);
      track.removeEventListener('mute', onMute);
      context.removeEventListener('statechange', onStateChange);
      node.port.onmessage = null;
      source.disconnect();
      frontEnd.terminate();
      for (const open of stream.getTracks()) open.stop();
      void context.close();
    },
  };
}

/** Whether something is on that was to be off. A wish is all a page has: some tablets filter whatever they are asked. */
function isAltered(track: MediaStreamTrack, wanted: CaptureSettings): boolean {
  const settings = track.getSettings();
  // A browser that does not know a setting says nothing of it; one that has several kinds of it says which.
  return CAPTURE_SETTINGS.some((each) => !wanted[each] && (settings[each] ?? false) !== false);
}

/** The DOMExceptions of getUserMedia (W3C Media Capture and Streams, section 10.2) as our failures. */
function refusalOf(error: unknown): EarsFailure {
  switch (error instanceof DOMException ? error.name : '') {
    case 'NotAllowedError':
    case 'SecurityError':
      return { kind: 'microphone-refused' };
    case 'NotFoundError':
    case 'OverconstrainedError':
      return { kind: 'no-microphone' };
    case 'NotReadableError':
    case 'AbortError':
      return { kind: 'microphone-busy' };
    default:
      return { kind: 'capture-failed', detail: messageOf(error) };
  }
}

function startsWithin(context: AudioContext, limitMs: number): Promise<boolean> {
  if (context.state === 'running') return Promise.resolve(true);
  return new Promise((resolve) => {
    const timer = setTimeout(() => done(false), limitMs);
    const check = (): void => {
      if (context.state === 'running') done(true);
    };
    const done = (isRunning: boolean): void => {
      clearTimeout(timer);
      context.removeEventListener('statechange', check);
      resolve(isRunning);
    };
    context.addEventListener('statechange', check);
  });
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
