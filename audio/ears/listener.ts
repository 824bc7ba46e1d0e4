import { recogniserTimeFactor } from '../command-model/decode-protocol.ts';
import { prepareUtterance } from '../command-model/listening/prepare-utterance.ts';
import { BandwidthWatch } from './bandwidth.ts';
import type { EarsFailure } from './failures.ts';
import type { DecodedWord } from './heard-words.ts';
import { LevelMeter, type LevelReading, noiseWord, rmsDbfs, snrDb } from './level.ts';
import {
  type CaptureSettings,
  type Microphone,
  type MicrophoneEvent,
  openMicrophone,
  PLAIN_CAPTURE,
} from './microphone.ts';
import type { ModelArchive } from './model-file.ts';
import { type DecodingSession, loadRecogniser, type Recogniser } from './recogniser.ts';
import { ShoutDetector } from './shout-detector.ts';
import { BLOCK_SAMPLES, samplesToMs } from './sound-format.ts';
import {
  END_AFTER_COMPLETE_MS,
  END_AFTER_INCOMPLETE_MS,
  SpeechDetector,
  type SpeechEvent,
} from './speech-detector.ts';
import { marginOf, type SpeechSpan, type Utterance, wordsWithin } from './utterance.ts';
import { UtteranceSound } from './utterance-sound.ts';

/**
 * The ears as the app uses them: one microphone, one recogniser, one list of phrases at a time.
 *
 * The recogniser hears nothing but bounded utterances, cleaned of the room's noise; what it is cleaned of is learnt from the
 * room's last seconds, our own voice left out. While a pause may still turn out to be the end of the phrase it is decoded
 * already, so that the answer is there when the pause is long enough.
 */

export type EarsEvent =
  /** Bytes of the speech model as they arrive, on the first start only. */
  | { readonly type: 'model.progress'; readonly gotBytes: number; readonly wantedBytes: number }
  /** Voice can be used from now on. */
  | { readonly type: 'ready'; readonly loadMs: number; readonly deviceRateHz: number }
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
   * What is to be understood from now on. A list with a word that the model lacks is refused by a `failed` event.
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
  readonly archive: ModelArchive;
  readonly capture?: CaptureSettings;
}

/** Pause after which an utterance is decoded, milliseconds, in case it is over. */
const GUESS_AFTER_MS = 200;

/** Speech shorter than this that says nothing was a knock. */
const SHORTEST_SPEECH_MS = 250;

/** Room needed to know its noise, milliseconds. */
const ROOM_KNOWN_AFTER_MS = 1_000;

/** A recogniser that died is started again, but not twice within this time: then something is wrong for good. */
const REVIVE_NOT_WITHIN_MS = 60_000;

/** Sound before a shout that it is cleaned with: the echo of our own voice. */
const BEFORE_SHOUT_BLOCKS = 20;

/** Sound after a shout, and the most that one can take, in blocks. */
const KEPT_OF_SHOUT_BLOCKS = 20;

/** A shout must be nothing but a stop word, this surely. */
const SHOUT_MARGIN = 0.4;

/** Makes the ears. Nothing is opened before {@link Listener.start}. */
export function createListener(settings: ListenerSettings): Listener {
  return new Ears(settings);
}

/** What an utterance was decoded to. */
interface Reading {
  readonly words: readonly DecodedWord[];
  readonly span: SpeechSpan;
}

/** An utterance decoded before it was known to be over. */
interface Guess {
  readonly endSample: number;
  readonly session: DecodingSession;
  readonly reading: Promise<Reading | undefined>;
}

class Ears implements Listener {
  readonly #settings: ListenerSettings;
  readonly #subscribers = new Set<(event: EarsEvent) => void>();
  readonly #sound = new UtteranceSound();
  #detector = new SpeechDetector();
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
  #shout:
    | { readonly words: readonly string[]; readonly detector: ShoutDetector; recent: Float32Array[] }
    | undefined;
  /** Samples the microphone gave so far, and when the last of them came. */
  #position = 0;
  #positionAtMs = 0;
  #revivedAtMs = Number.NEGATIVE_INFINITY;
  /** Raised by stop(), so that a start still under way is undone. */
  #generation = 0;

  constructor(settings: ListenerSettings) {
    this.#settings = settings;
  }

  subscribe(subscriber: (event: EarsEvent) => void): () => void {
    this.#subscribers.add(subscriber);
    return () => this.#subscribers.delete(subscriber);
  }

  async start(): ReturnType<Listener['start']> {
    const generation = this.#generation;
    document.addEventListener('visibilitychange', this.#watchVisibility);
    const [microphone, recogniser] = await Promise.all([this.#openMicrophone(), this.#loadRecogniser()]);
    if (generation !== this.#generation) {
      this.stop();
      return { ok: false, failure: { kind: 'capture-failed', detail: 'stopped while starting' } };
    }
    const failure = microphone ?? recogniser;
    if (failure !== undefined) {
      this.#emit({ type: 'failed', failure });
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

  async #openMicrophone(): Promise<EarsFailure | undefined> {
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
    const opened = await openMicrophone(
      (event) => this.#hear(event),
      this.#settings.capture ?? PLAIN_CAPTURE,
    );
    if (!opened.ok) return opened.failure;
    this.#microphone = opened.microphone;
    return undefined;
  }

  async #loadRecogniser(): Promise<EarsFailure | undefined> {
    if (this.#recogniser !== undefined) return undefined;
    const loaded = await loadRecogniser({
      archive: this.#settings.archive,
      timeScale: recogniserTimeFactor,
      onProgress: (gotBytes, wantedBytes) => this.#emit({ type: 'model.progress', gotBytes, wantedBytes }),
      onDeath: (failure) => void this.#revive(failure),
    });
    if (!loaded.ok) return loaded.failure;
    this.#recogniser = loaded.recogniser;
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
    const again = await this.#loadRecogniser();
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
    const words = this.#recogniser?.unknownIn(this.#wanted?.list ?? []) ?? [];
    if (words.length > 0) this.#emit({ type: 'failed', failure: { kind: 'phrase-unknown', words } });
  }

  shut(stopWords: readonly string[] = []): void {
    this.#mode = 'shut';
    this.#dropSpeech();
    this.#shout =
      stopWords.length > 0 ? { words: stopWords, detector: new ShoutDetector(), recent: [] } : undefined;
  }

  open(): void {
    if (this.#mode === 'open') return;
    this.#mode = 'open';
    this.#shout = undefined;
    this.#dropSpeech();
    this.#sayListening();
  }

  #sayListening(): void {
    if (this.#mode === 'shut' || this.#wanted === undefined || this.#recogniser === undefined) return;
    this.#emit({ type: 'listening', isRoomKnown: this.#sound.roomMs >= ROOM_KNOWN_AFTER_MS });
  }

  async resume(): Promise<void> {
    await this.#microphone?.resume();
  }

  stop(): void {
    this.#generation += 1;
    document.removeEventListener('visibilitychange', this.#watchVisibility);
    this.#isHidden = false;
    this.#mode = 'open';
    this.#shout = undefined;
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
    this.#guess?.session.dispose();
    this.#guess = undefined;
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
        this.#take(event.samples);
        break;
      case 'failed':
        if (event.failure.kind === 'microphone-unplugged') {
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

  #take(block: Float32Array): void {
    this.#position += block.length;
    this.#positionAtMs = performance.now();
    if (this.#isHidden) return;
    if (this.#mode === 'shut') {
      this.#takeOverMouth(block);
      return;
    }
    // One utterance at a time: what is said while it is decided would be an answer to nothing.
    if (this.#isDeciding) return;
    const events = this.#detector.push(block);
    const { isSpeech } = this.#detector;
    this.#emit({ type: 'level', reading: this.#meter.take(block, isSpeech) });
    if (isSpeech) this.#bandwidth.takeSpeech(block);
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
      this.#guess = this.#read(this.#startSample, pause.sinceSample);
    }
  }

  /** Cleans and decodes the utterance between two of the microphone's samples. */
  #read(startSample: number, endSample: number): Guess | undefined {
    const opened = this.#recogniser?.open(this.#wanted?.list ?? []);
    if (opened?.ok !== true) return undefined;
    const { session } = opened;
    const { samples, indexOf } = this.#sound.soFar();
    const prepared = prepareUtterance(samples, Math.max(0, indexOf(startSample)), indexOf(endSample));
    const span = { startMs: prepared.speechStartMs, endMs: prepared.speechEndMs };
    const reading = session.decode(prepared.samples).then((decoded) => {
      session.dispose();
      return decoded.ok ? { words: wordsWithin(decoded.words, span), span } : undefined;
    });
    return { endSample, session, reading };
  }

  async #decide(startSample: number, endSample: number): Promise<void> {
    const decidedAtMs = performance.now();
    const turn = this.#turn;
    const guess = this.#guess?.endSample === endSample ? this.#guess : this.#read(startSample, endSample);
    this.#isDeciding = true;
    const startedAtMs = this.#clockAt(startSample);
    const endedAtMs = this.#clockAt(endSample);
    const { samples, indexOf } = this.#sound.soFar();
    const levelDbfs = rmsDbfs(samples.subarray(Math.max(0, indexOf(startSample)), indexOf(endSample)));
    const reading = await guess?.reading;
    // Shut, asked for something else, or stopped meanwhile; a recogniser that died has been told of.
    if (turn !== this.#turn) return;
    this.#dropSpeech();
    if (reading === undefined) return;
    const times = { startedAtMs, endedAtMs, decidedAtMs };
    const utterance = utteranceOf(reading, times, levelDbfs, this.#meter.floorDbfs);
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

  /** Listens for a stop word called over the mouth. */
  #takeOverMouth(block: Float32Array): void {
    const shout = this.#shout;
    if (shout === undefined) return;
    shout.recent.push(block);
    if (shout.recent.length > BEFORE_SHOUT_BLOCKS + KEPT_OF_SHOUT_BLOCKS) shout.recent.shift();
    const found = shout.detector.take(block);
    const opened = found === undefined ? undefined : this.#recogniser?.open(shout.words);
    if (found === undefined || opened?.ok !== true) return;
    const blocks = shout.recent.length;
    const samples = new Float32Array(blocks * BLOCK_SAMPLES);
    for (const [i, each] of shout.recent.entries()) samples.set(each, i * BLOCK_SAMPLES);
    const from = Math.max(0, blocks - 1 - found.firstBack) * BLOCK_SAMPLES;
    const to = (blocks - found.lastBack) * BLOCK_SAMPLES;
    const prepared = prepareUtterance(samples, from, to);
    const span = { startMs: prepared.speechStartMs, endMs: prepared.speechEndMs };
    void opened.session.decode(prepared.samples).then((decoded) => {
      opened.session.dispose();
      if (!decoded.ok || this.#shout !== shout) return;
      const words = wordsWithin(decoded.words, span);
      const word = words[0]?.word;
      const isStop = words.length === 1 && word !== undefined && shout.words.includes(word);
      if (!isStop || marginOf(words, span) < SHOUT_MARGIN) return;
      this.#shout = undefined;
      this.#emit({ type: 'stop.heard', word });
    });
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
  floorDbfs: number,
): Utterance {
  const ratioDb = snrDb(levelDbfs, floorDbfs);
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
    snrDb: ratioDb,
    noise: noiseWord(ratioDb),
    margin: marginOf(words, span),
  };
}
