import { BandwidthWatch } from './bandwidth.ts';
import { Cutter } from './cutter.ts';
import type { EarsFailure } from './failures.ts';
import type { SoundBlock } from './front-end.ts';
import { LevelMeter, type LevelReading, rmsDbfs, snrDb } from './level.ts';
import {
  type CaptureSettings,
  isForGood,
  type Microphone,
  type MicrophoneEvent,
  openMicrophone,
  PLAIN_CAPTURE,
} from './microphone.ts';
import { loadRecogniser, type Recogniser, type RecogniserSettings } from './recogniser.ts';
import { LEVEL_SAMPLES, samplesToMs } from './sound-format.ts';
import {
  END_AFTER_COMPLETE_MS,
  END_AFTER_INCOMPLETE_MS,
  GUESS_AFTER_MS,
  SpeechDetector,
  type SpeechEvent,
} from './speech-detector.ts';
import { StopEars } from './stop-ears.ts';
import { marginOf, type Utterance } from './utterance.ts';
import { type PendingReading, type Reading, readUtterance } from './utterance-reader.ts';
import { UtteranceSound } from './utterance-sound.ts';

/**
 * The ears as the app uses them: one microphone, one recogniser, one list of phrases at a time.
 *
 * The recogniser hears nothing but bounded utterances, cleaned of the room's noise; what the front end leaves of that is
 * learnt from the room's last seconds, our own voice left out. While a pause may still turn out to be the end of the phrase
 * it is decoded already, so that the answer is there when the pause is long enough.
 */

export type EarsEvent =
  /** Bytes of the speech model as they arrive, on the first start only. */
  | { readonly type: 'model.progress'; readonly gotBytes: number; readonly wantedBytes: number }
  /** Voice can be used from now on. */
  | { readonly type: 'ready'; readonly loadMs: number; readonly deviceRateHz: number }
  /** The most wanted speech model did not load, so another one listens. */
  | { readonly type: 'model.passedOver'; readonly failure: EarsFailure }
  /** The ears are open. The room is known when there was enough of it to clean an utterance of its noise. */
  | { readonly type: 'listening'; readonly isRoomKnown: boolean }
  | { readonly type: 'speech.started'; readonly atMs: number }
  /** What began as speech was a knock, or went on too long for an answer. Not a failed answer. */
  | { readonly type: 'speech.dropped'; readonly because: 'too short' | 'too long' }
  | { readonly type: 'utterance'; readonly utterance: Utterance }
  /** A stop word was called over the mouth's voice. */
  | { readonly type: 'stop.heard'; readonly word: string }
  /** About ten times a second while the ears are open. */
  | { readonly type: 'level'; readonly reading: LevelReading }
  /** Said as it is opened: the browser works on the sound, so how well is heard is not known and never called better than poor. */
  | { readonly type: 'sound.altered' }
  /** Said once: the microphone carries only the telephone's band, and voice will be misheard. */
  | { readonly type: 'band.limited' }
  | { readonly type: 'failed'; readonly failure: EarsFailure }
  /** The page went out of sight: nothing is heard until it is back. */
  | { readonly type: 'paused' }
  | { readonly type: 'resumed' }
  /** A failure is over: sound comes again, or the recogniser was started anew. */
  | { readonly type: 'recovered' };

export interface Listener {
  /**
   * Opens the microphone and loads the recogniser, both at once. Call it from a tap the first time. Never rejects.
   * Calling it again after a failure tries again what failed.
   */
  start(): Promise<{ readonly ok: true } | { readonly ok: false; readonly failure: EarsFailure }>;
  /**
   * What is to be understood from now on. A list with a word that a model of phrases lacks is refused by a `failed` event.
   * @param list words of the model's graph
   */
  listenFor(list: readonly string[], options: ListenOptions): void;
  /** The mouth speaks: nothing is heard, or nothing but the stop words given, and those only when called louder than it. */
  shut(stopWords?: readonly string[]): void;
  /** The mouth and its echo are done. */
  open(): void;
  /** Lets sound flow after the browser suspended it ('needs-a-tap'). Call it from a tap. */
  resume(): Promise<void>;
  /** Closes microphone and recogniser. {@link Listener.start} opens them again. */
  stop(): void;
  /** @returns a function that ends the subscription */
  subscribe(subscriber: (event: EarsEvent) => void): () => void;
}

export interface ListenOptions {
  /** Whether an answer may go on after a complete phrase ("three" ... "and a half"): then the pause that ends it is longer. */
  readonly canGoOn: boolean;
}

export interface ListenerSettings {
  readonly models: RecogniserSettings['models'];
  readonly capture?: CaptureSettings;
}

/** Speech shorter than this that says nothing was a knock. */
const SHORTEST_SPEECH_MS = 250;

/** Room needed to know its noise, milliseconds. */
const ROOM_KNOWN_AFTER_MS = 1_000;

/** A recogniser that died is started again, but not twice within this time: then something is wrong for good. */
const REVIVE_NOT_WITHIN_MS = 60_000;

const STOPPED_MEANWHILE: EarsFailure = { kind: 'capture-failed', detail: 'stopped while starting' };

/** Makes the ears. Nothing is opened before {@link Listener.start}. */
export function createListener(settings: ListenerSettings): Listener {
  return new Ears(settings);
}

/** An utterance decoded before it was known to be over. */
interface Guess {
  readonly endSample: number;
  readonly pending: PendingReading;
}

class Ears implements Listener {
  readonly #settings: ListenerSettings;
  readonly #subscribers = new Set<(event: EarsEvent) => void>();
  readonly #sound = new UtteranceSound();
  #detector = new SpeechDetector();
  readonly #loudness = new Cutter(LEVEL_SAMPLES);
  #meter = new LevelMeter();
  #bandwidth = new BandwidthWatch();
  #isBandLimitSaid = false;
  #microphone: Microphone | undefined;
  #recogniser: Recogniser | undefined;
  #wanted: { readonly list: readonly string[]; readonly options: ListenOptions } | undefined;
  /** Open from the start, so that the room is known before the first prompt. */
  #mode: 'shut' | 'open' = 'open';
  #isHidden = false;
  #startSample: number | undefined;
  #guess: Guess | undefined;
  /** Raised whenever what is being heard loses its meaning: a new list, shut ears, a stop. */
  #turn = 0;
  #isDeciding = false;
  #stopEars: StopEars | undefined;
  /** Samples the microphone gave so far, and when the last of them came. */
  #position = 0;
  #positionAtMs = 0;
  #revivedAtMs = Number.NEGATIVE_INFINITY;
  /** Raised by stop(), so that a start still under way is undone. */
  #generation = 0;
  #starting: ReturnType<Listener['start']> | undefined;

  constructor(settings: ListenerSettings) {
    this.#settings = settings;
  }

  subscribe(subscriber: (event: EarsEvent) => void): () => void {
    this.#subscribers.add(subscriber);
    return () => this.#subscribers.delete(subscriber);
  }

  start(): ReturnType<Listener['start']> {
    this.#starting ??= this.#startOnce(this.#generation).finally(() => {
      this.#starting = undefined;
    });
    return this.#starting;
  }

  async #startOnce(generation: number): ReturnType<Listener['start']> {
    document.addEventListener('visibilitychange', this.#watchVisibility);
    const failures = await Promise.all([this.#openMicrophone(generation), this.#loadRecogniser(generation)]);
    const failure = failures.find((each) => each !== undefined);
    if (failure !== undefined) {
      if (generation === this.#generation) this.#emit({ type: 'failed', failure });
      return { ok: false, failure };
    }
    this.#emit({
      type: 'ready',
      loadMs: this.#recogniser?.loadMs ?? 0,
      deviceRateHz: this.#microphone?.deviceRateHz ?? 0,
    });
    this.#checkList();
    this.#sayListening();
    return { ok: true };
  }

  /** @param generation what was started; if it was stopped meanwhile, what came of it is closed again */
  async #openMicrophone(generation: number): Promise<EarsFailure | undefined> {
    if (this.#microphone !== undefined) return undefined;
    // Another microphone may hear another room.
    this.#dropSpeech();
    this.#sound.forgetRoom();
    this.#detector = new SpeechDetector();
    this.#setHangover();
    this.#meter = new LevelMeter();
    this.#bandwidth = new BandwidthWatch();
    this.#isBandLimitSaid = false;
    this.#position = 0;
    const opened = await openMicrophone((event) => {
      if (generation === this.#generation) this.#hear(event);
    }, this.#settings.capture ?? PLAIN_CAPTURE);
    if (!opened.ok) return opened.failure;
    if (generation !== this.#generation) {
      opened.microphone.stop();
      return STOPPED_MEANWHILE;
    }
    this.#microphone = opened.microphone;
    if (opened.microphone.isAltered) {
      this.#meter = new LevelMeter('poor');
      this.#emit({ type: 'sound.altered' });
    }
    return undefined;
  }

  async #loadRecogniser(generation: number): Promise<EarsFailure | undefined> {
    if (this.#recogniser !== undefined) return undefined;
    const loaded = await loadRecogniser({
      models: this.#settings.models,
      onProgress: (gotBytes, wantedBytes) => this.#emit({ type: 'model.progress', gotBytes, wantedBytes }),
      onDeath: (failure) => {
        if (generation === this.#generation) void this.#revive(failure);
      },
    });
    if (!loaded.ok) return loaded.failure;
    if (generation !== this.#generation) {
      loaded.recogniser.close();
      return STOPPED_MEANWHILE;
    }
    this.#recogniser = loaded.recogniser;
    if (loaded.passedOver) this.#emit({ type: 'model.passedOver', failure: loaded.passedOver });
    return undefined;
  }

  /** Starts a dead recogniser once more; the person only notices a pause. */
  async #revive(failure: EarsFailure): Promise<void> {
    this.#dropSpeech();
    this.#recogniser = undefined;
    this.#emit({ type: 'failed', failure });
    if (performance.now() - this.#revivedAtMs < REVIVE_NOT_WITHIN_MS) return;
    this.#revivedAtMs = performance.now();
    const generation = this.#generation;
    const again = await this.#loadRecogniser(generation);
    if (generation !== this.#generation) return;
    this.#emit(again === undefined ? { type: 'recovered' } : { type: 'failed', failure: again });
  }

  listenFor(list: readonly string[], options: ListenOptions): void {
    this.#wanted = { list, options };
    this.#dropSpeech();
    this.#setHangover();
    this.#checkList();
    this.#sayListening();
  }

  #setHangover(): void {
    const canGoOn = this.#wanted?.options.canGoOn === true;
    this.#detector.endAfter(canGoOn ? END_AFTER_INCOMPLETE_MS : END_AFTER_COMPLETE_MS);
  }

  /** Tells of words that the model lacks when the list is set, not when somebody says one of them. */
  #checkList(): void {
    const words = this.#lacking();
    if (words.length > 0) this.#emit({ type: 'failed', failure: { kind: 'phrase-unknown', words } });
  }

  /** Words of the list for want of which the model refuses all of it. */
  #lacking(): readonly string[] {
    // A model of ordinary words has its gaps known and shown since it was packed; the rest of the list is heard.
    if (this.#recogniser?.model.graph === 'words') return [];
    return this.#recogniser?.unknownIn(this.#wanted?.list ?? []) ?? [];
  }

  shut(stopWords: readonly string[] = []): void {
    this.#mode = 'shut';
    this.#dropSpeech();
    this.#endStopEars();
    if (stopWords.length > 0) {
      this.#stopEars = new StopEars(stopWords, (word) => this.#emit({ type: 'stop.heard', word }));
    }
  }

  open(): void {
    if (this.#mode === 'open') return;
    this.#mode = 'open';
    this.#meter.resume();
    this.#endStopEars();
    this.#dropSpeech();
    this.#sayListening();
  }

  #sayListening(): void {
    if (this.#mode === 'shut' || this.#wanted === undefined || this.#recogniser === undefined) return;
    if (this.#lacking().length > 0) return;
    this.#emit({ type: 'listening', isRoomKnown: this.#sound.roomMs >= ROOM_KNOWN_AFTER_MS });
  }

  async resume(): Promise<void> {
    await this.#microphone?.resume();
  }

  stop(): void {
    this.#generation += 1;
    document.removeEventListener('visibilitychange', this.#watchVisibility);
    this.#isHidden = false;
    this.#starting = undefined;
    this.#mode = 'open';
    this.#endStopEars();
    this.#dropSpeech();
    this.#microphone?.stop();
    this.#microphone = undefined;
    this.#recogniser?.close();
    this.#recogniser = undefined;
  }

  /** Forgets the speech being heard or decided, and begins anew with what comes next. */
  #dropSpeech(): void {
    this.#turn += 1;
    this.#isDeciding = false;
    this.#startSample = undefined;
    this.#dropGuess();
    this.#sound.clear();
    this.#detector.resumeAt(this.#position);
  }

  #dropGuess(): void {
    this.#guess?.pending.drop();
    this.#guess = undefined;
  }

  #endStopEars(): void {
    this.#stopEars?.shut();
    this.#stopEars = undefined;
  }

  readonly #watchVisibility = (): void => {
    const isHidden = document.visibilityState === 'hidden';
    if (isHidden === this.#isHidden) return;
    this.#isHidden = isHidden;
    // Half a phrase from before is no phrase, and the room may be another one.
    this.#dropSpeech();
    this.#sound.forgetRoom();
    if (!isHidden) void this.#microphone?.resume();
    this.#emit({ type: isHidden ? 'paused' : 'resumed' });
  };

  #hear(event: MicrophoneEvent): void {
    switch (event.type) {
      case 'block':
        this.#take(event.block, event.cameAtMs);
        break;
      case 'failed':
        if (isForGood(event.failure)) {
          this.#microphone?.stop();
          this.#microphone = undefined;
        }
        this.#emit(event);
        break;
      case 'recovered':
        this.#dropSpeech();
        this.#emit(event);
        break;
    }
  }

  #take(block: SoundBlock, cameAtMs: number): void {
    this.#position += block.heard.length;
    this.#positionAtMs = cameAtMs;
    if (this.#isHidden) return;
    if (this.#mode === 'shut') {
      this.#stopEars?.take(block, this.#recogniser);
      return;
    }
    // One utterance at a time: what is said while it is decided would be an answer to nothing.
    if (this.#isDeciding) return;
    const events = this.#detector.push(block.denoised);
    const { isSpeech } = this.#detector;
    for (const heard of this.#loudness.cut(block.heard)) {
      this.#emit({ type: 'level', reading: this.#meter.take(heard) });
      if (isSpeech) this.#bandwidth.takeSpeech(heard);
    }
    this.#sound.take(block, isSpeech || events.length > 0, this.#position);
    for (const heard of events) this.#heard(heard);
    this.#guessEnd();
  }

  #heard(event: SpeechEvent): void {
    if (this.#wanted === undefined || this.#recogniser === undefined) {
      // Nothing is asked for yet, but somebody's voice must not become the room.
      if (event.type === 'ended') this.#dropSpeech();
      return;
    }
    if (event.type === 'started') {
      this.#startSample = event.startSample;
      this.#emit({ type: 'speech.started', atMs: this.#clockAt(event.startSample) });
    } else if (event.because === 'cut') {
      this.#dropSpeech();
      this.#emit({ type: 'speech.dropped', because: 'too long' });
    } else {
      void this.#decide(event.startSample, event.endSample);
    }
  }

  /** Decodes an utterance that has paused, in case that was its end. */
  #guessEnd(): void {
    const { pause } = this.#detector;
    if (pause === undefined || this.#startSample === undefined) return;
    if (this.#guess !== undefined && this.#guess.endSample !== pause.sinceSample) this.#dropGuess();
    if (this.#guess === undefined && pause.ms >= GUESS_AFTER_MS) {
      const pending = this.#read(this.#startSample, pause.sinceSample);
      this.#guess = pending === undefined ? undefined : { endSample: pause.sinceSample, pending };
    }
  }

  /** Decodes the utterance between two of the microphone's samples. */
  #read(startSample: number, endSample: number): PendingReading | undefined {
    if (this.#recogniser === undefined || this.#wanted === undefined) return undefined;
    const { samples, indexOf } = this.#sound.soFar();
    return readUtterance(
      this.#recogniser,
      this.#wanted.list,
      samples,
      indexOf(startSample),
      indexOf(endSample),
    );
  }

  async #decide(startSample: number, endSample: number): Promise<void> {
    const decidedAtMs = performance.now();
    const turn = this.#turn;
    const isGuessRight = this.#guess?.endSample === endSample;
    const pending = isGuessRight ? this.#guess?.pending : this.#read(startSample, endSample);
    this.#isDeciding = true;
    const startedAtMs = this.#clockAt(startSample);
    const endedAtMs = this.#clockAt(endSample);
    const levelDbfs = rmsDbfs(this.#sound.heardBetween(startSample, endSample));
    const reading = await pending?.reading;
    // Shut, asked for something else, or stopped meanwhile; a recogniser that died has been told of.
    if (turn !== this.#turn) return;
    this.#dropSpeech();
    if (reading === undefined) return;
    const times = { startedAtMs, endedAtMs, decidedAtMs };
    const utterance = utteranceOf(reading, times, levelDbfs, this.#meter);
    if (utterance.margin > 0) this.#meter.takeVoice(levelDbfs);
    if (utterance.text === '' && endedAtMs - startedAtMs < SHORTEST_SPEECH_MS) {
      this.#emit({ type: 'speech.dropped', because: 'too short' });
      return;
    }
    this.#emit({ type: 'utterance', utterance });
    this.#sayBandLimit();
  }

  #sayBandLimit(): void {
    if (this.#isBandLimitSaid || this.#bandwidth.isBandLimited !== true) return;
    this.#isBandLimitSaid = true;
    this.#emit({ type: 'band.limited' });
  }

  #clockAt(sample: number): number {
    return this.#positionAtMs - samplesToMs(this.#position - sample);
  }

  #emit(event: EarsEvent): void {
    for (const subscriber of [...this.#subscribers]) subscriber(event);
  }
}

function utteranceOf(
  { words, span }: Reading,
  times: Pick<Utterance, 'startedAtMs' | 'endedAtMs' | 'decidedAtMs'>,
  levelDbfs: number,
  meter: Pick<LevelMeter, 'floorDbfs' | 'hearing' | 'isFaint'>,
): Utterance {
  const toClock = (ms: number) => times.startedAtMs + ms - span.startMs;
  return {
    ...times,
    text: words.map(({ word }) => word).join(' '),
    words: words.map(({ word, startMs, endMs, confidence }) => ({
      word,
      startAtMs: toClock(startMs),
      endAtMs: toClock(endMs),
      confidence,
    })),
    levelDbfs,
    snrDb: snrDb(levelDbfs, meter.floorDbfs),
    // Of a room that is not known nothing good is believed.
    hearing: meter.hearing ?? 'poor',
    margin: marginOf(words, span, meter.isFaint(levelDbfs)),
  };
}
