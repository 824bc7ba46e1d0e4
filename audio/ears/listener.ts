import { recogniserTimeFactor, roomBeforeMs } from '../command-model/decode-protocol.ts';
import { prepareUtterance } from '../command-model/listening/prepare-utterance.ts';
import { StreamCleaner } from '../command-model/listening/stream-cleaner.ts';
import { BandwidthWatch } from './bandwidth.ts';
import type { EarsFailure } from './failures.ts';
import { LevelMeter, type LevelReading, meanPower, noiseWord, powerToDb, snrDb } from './level.ts';
import {
  type CaptureSettings,
  type Microphone,
  type MicrophoneEvent,
  openMicrophone,
  PLAIN_CAPTURE,
} from './microphone.ts';
import type { ModelArchive } from './model-file.ts';
import { type Decoded, type DecodingSession, loadRecogniser, type Recogniser } from './recogniser.ts';
import { RoomMemory } from './room-memory.ts';
import { msToSamples, samplesToMs } from './sound-format.ts';
import {
  END_AFTER_COMPLETE_MS,
  END_AFTER_INCOMPLETE_MS,
  SpeechDetector,
  type SpeechEvent,
} from './speech-detector.ts';
import { marginOf, type SpeechSpan, type Utterance, wordsWithin } from './utterance.ts';

/**
 * The ears as the app uses them: one microphone, one recogniser, one list of phrases at a time.
 *
 * Each prompt gets a new recogniser, because its list of phrases cannot be changed. It gets nothing but speech: noise between
 * phrases only gives it something to hang phrases on. The room's last seconds are kept, to take its noise out of the speech.
 */

export type EarsEvent =
  /** Bytes of the speech model as they arrive, on the first start only. */
  | { readonly type: 'model.progress'; readonly gotBytes: number; readonly wantedBytes: number }
  /** Voice can be used from now on. */
  | { readonly type: 'ready'; readonly loadMs: number; readonly deviceRateHz: number }
  /** The ears are open. Warm: the recogniser has heard enough of the room to be trusted. */
  | { readonly type: 'listening'; readonly isWarm: boolean }
  | { readonly type: 'speech.started'; readonly atMs: number }
  /** What began as speech was a knock, or went on too long for an answer. Not a failed answer. */
  | { readonly type: 'speech.dropped'; readonly because: 'too short' | 'too long' }
  | { readonly type: 'utterance'; readonly utterance: Utterance }
  /** A stop word was heard while the mouth spoke. */
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
   * What is to be understood next. Call it when the prompt begins, so that the recogniser is warm when the prompt ends.
   * @param list words of the model's graph
   */
  listenFor(list: readonly string[], options: ListenOptions): void;
  /** The mouth speaks: nothing is heard, or nothing but the stop words given. */
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

/** Sound kept in front of detected speech and given to the recogniser with it, milliseconds. */
const LEAD_MS = 400;

/** Blocks held back from the room memory: the start of speech is noticed late and must not become the room. */
const HELD_BACK_BLOCKS = 4;

/** Speech shorter than this that says nothing was a knock. */
const SHORTEST_SPEECH_MS = 250;

/** Room that must have been heard for its noise to be known, milliseconds. */
const WARM_AFTER_MS = 2_000;

/** A recogniser that died is started again, but not twice within this time: then something is wrong for good. */
const REVIVE_NOT_WITHIN_MS = 60_000;

/** A stop word must still be there this many partial results later. */
const STOP_SEEN_TIMES = 2;

/** Makes the ears. Nothing is opened before {@link Listener.start}. */
export function createListener(settings: ListenerSettings): Listener {
  return new Ears(settings);
}

/** A session and where the speech in it lies. */
interface Prepared {
  readonly session: DecodingSession;
  /** The speech being heard: where its sound begins on the microphone, a lead before the speech, and that sound. */
  speech: { readonly fromSample: number; readonly blocks: Float32Array[] } | undefined;
  isFinishing: boolean;
}

class Ears implements Listener {
  readonly #settings: ListenerSettings;
  readonly #subscribers = new Set<(event: EarsEvent) => void>();
  readonly #room = new RoomMemory(roomBeforeMs);
  #detector = new SpeechDetector();
  #meter = new LevelMeter();
  #bandwidth = new BandwidthWatch();
  #saidBandLimited = false;
  #microphone: Microphone | undefined;
  #recogniser: Recogniser | undefined;
  #wanted: { readonly list: readonly string[]; readonly options: ListenOptions } | undefined;
  #prepared: Prepared | undefined;
  #stopSession: DecodingSession | undefined;
  #stopCleaner = new StreamCleaner();
  /** How the last utterance's speaker sounded here, for listening that cannot wait for an utterance's end. */
  #speakerMean: Float64Array | undefined;
  #mode: 'shut' | 'open' = 'shut';
  #isHidden = false;
  /** The last blocks, oldest first, for what lies before the start of speech was noticed. */
  #recent: Float32Array[] = [];
  #heldBack: Float32Array[] = [];
  /** Samples the microphone gave so far, and when the last of them came. */
  #position = 0;
  #positionAtMs = 0;
  #speechPower = 0;
  #speechBlocks = 0;
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
    this.#prepare();
    return { ok: true };
  }

  readonly #watchVisibility = (): void => {
    const isHidden = document.visibilityState === 'hidden';
    if (isHidden === this.#isHidden) return;
    this.#isHidden = isHidden;
    if (isHidden) {
      this.#emit({ type: 'paused' });
      return;
    }
    // The room may be another one, and half a phrase from before is no phrase.
    this.#room.clear();
    this.#heldBack = [];
    this.#recent = [];
    this.#detector.resumeAt(this.#position);
    void this.#microphone?.resume();
    this.#emit({ type: 'resumed' });
    this.#prepare();
  };

  async #openMicrophone(): Promise<EarsFailure | undefined> {
    if (this.#microphone !== undefined) return undefined;
    // Another microphone may hear another room.
    this.#room.clear();
    this.#detector = new SpeechDetector();
    this.#meter = new LevelMeter();
    this.#bandwidth = new BandwidthWatch();
    this.#saidBandLimited = false;
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
    this.#forgetSessions();
    this.#recogniser = undefined;
    this.#emit({ type: 'failed', failure });
    if (performance.now() - this.#revivedAtMs < REVIVE_NOT_WITHIN_MS) return;
    this.#revivedAtMs = performance.now();
    const generation = this.#generation;
    const again = await this.#loadRecogniser();
    if (generation !== this.#generation) return;
    if (again !== undefined) {
      this.#emit({ type: 'failed', failure: again });
      return;
    }
    this.#emit({ type: 'recovered' });
    this.#prepare();
  }

  listenFor(list: readonly string[], options: ListenOptions): void {
    this.#wanted = { list, options };
    this.#detector.endAfter(options.canGoOn ? END_AFTER_INCOMPLETE_MS : END_AFTER_COMPLETE_MS);
    this.#prepare();
  }

  /** Makes a recogniser for the wanted list. */
  #prepare(): void {
    this.#prepared?.session.dispose();
    this.#prepared = undefined;
    if (this.#wanted === undefined || this.#recogniser === undefined) return;
    const opened = this.#recogniser.open(this.#wanted.list);
    if (!opened.ok) {
      this.#emit({ type: 'failed', failure: opened.failure });
      return;
    }
    this.#prepared = { session: opened.session, speech: undefined, isFinishing: false };
    if (this.#mode === 'open') this.#sayListening();
  }

  shut(stopWords: readonly string[] = []): void {
    this.#mode = 'shut';
    this.#heldBack = [];
    this.#recent = [];
    const prepared = this.#prepared;
    // A recogniser that already took speech in is of no use for the next answer.
    if (prepared?.speech !== undefined && !prepared.isFinishing) this.#prepare();
    this.#endStopEars();
    if (stopWords.length > 0) this.#openStopEars(stopWords);
  }

  open(): void {
    this.#endStopEars();
    if (this.#mode === 'open') return;
    this.#mode = 'open';
    this.#detector.resumeAt(this.#position);
    this.#sayListening();
  }

  #sayListening(): void {
    if (this.#prepared === undefined) return;
    this.#emit({ type: 'listening', isWarm: this.#room.heldMs >= WARM_AFTER_MS });
  }

  async resume(): Promise<void> {
    await this.#microphone?.resume();
  }

  stop(): void {
    this.#generation += 1;
    document.removeEventListener('visibilitychange', this.#watchVisibility);
    this.#isHidden = false;
    this.#mode = 'shut';
    this.#forgetSessions();
    this.#microphone?.stop();
    this.#microphone = undefined;
    this.#recogniser?.close();
    this.#recogniser = undefined;
  }

  #forgetSessions(): void {
    this.#prepared?.session.dispose();
    this.#prepared = undefined;
    this.#endStopEars();
  }

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
        this.#detector.resumeAt(this.#position);
        this.#emit(event);
        break;
    }
  }

  #take(block: Float32Array): void {
    this.#position += block.length;
    this.#positionAtMs = performance.now();
    if (this.#isHidden) return;
    if (this.#mode === 'shut') {
      this.#stopSession?.feed(this.#stopCleaner.push(block));
      return;
    }
    if (this.#prepared?.isFinishing === true) {
      this.#detector.resumeAt(this.#position);
      return;
    }
    this.#recent.push(block);
    if (samplesToMs(this.#recent.length * block.length) > LEAD_MS + 1_000) this.#recent.shift();
    const events = this.#detector.push(block);
    this.#emit({ type: 'level', reading: this.#meter.take(block, this.#detector.isSpeech) });
    if (this.#detector.isSpeech) this.#takeSpeech(block);
    else this.#takeRoom(block);
    for (const heard of events) this.#decide(heard);
  }

  #takeSpeech(block: Float32Array): void {
    this.#heldBack = [];
    const prepared = this.#prepared;
    prepared?.speech?.blocks.push(block);
    this.#speechPower += meanPower(block);
    this.#speechBlocks += 1;
    this.#bandwidth.takeSpeech(block);
  }

  #takeRoom(block: Float32Array): void {
    this.#heldBack.push(block);
    const room = this.#heldBack.length > HELD_BACK_BLOCKS ? this.#heldBack.shift() : undefined;
    if (room === undefined) return;
    this.#room.add(room);
  }

  #decide(heard: SpeechEvent): void {
    switch (heard.type) {
      case 'started':
        this.#startSpeech(heard.startSample);
        break;
      case 'ended':
        if (heard.because === 'cut') this.#dropSpeech('too long');
        else void this.#endSpeech(heard.startSample, heard.endSample);
        break;
    }
  }

  #startSpeech(startSample: number): void {
    const prepared = this.#prepared;
    if (prepared === undefined) return;
    const recent = joined(this.#recent);
    const leadFrom = Math.max(this.#position - recent.length, startSample - msToSamples(LEAD_MS));
    const lead = recent.slice(recent.length - (this.#position - leadFrom));
    prepared.speech = { fromSample: leadFrom, blocks: [lead] };
    this.#speechPower = meanPower(this.#recent.at(-1) ?? new Float32Array(0));
    this.#speechBlocks = 1;
    this.#emit({ type: 'speech.started', atMs: this.#clockAt(startSample) });
  }

  #dropSpeech(because: 'too short' | 'too long'): void {
    this.#emit({ type: 'speech.dropped', because });
    this.#prepare();
  }

  async #endSpeech(startSample: number, endSample: number): Promise<void> {
    const prepared = this.#prepared;
    if (prepared?.speech === undefined) return;
    const decidedAtMs = performance.now();
    const { fromSample, blocks } = prepared.speech;
    const room = this.#room.recall();
    const inSound = (sample: number) => room.length + sample - fromSample;
    const { samples, speechStartMs, speechEndMs, mean } = prepareUtterance(
      joined([room, ...blocks]),
      inSound(startSample),
      inSound(endSample),
    );
    this.#speakerMean = mean;
    prepared.session.feed(samples);
    const span: SpeechSpan = { startMs: speechStartMs, endMs: speechEndMs };
    prepared.isFinishing = true;
    const startedAtMs = this.#clockAt(startSample);
    const endedAtMs = this.#clockAt(endSample);
    const decoded = await prepared.session.finish();
    // Another prompt came meanwhile, or the recogniser died: both have said what comes next.
    if (this.#prepared !== prepared || !decoded.ok) return;
    const toClock = (ms: number) => startedAtMs + ms - span.startMs;
    const utterance = this.#utteranceOf(decoded, span, toClock, { startedAtMs, endedAtMs, decidedAtMs });
    if (utterance.text === '' && span.endMs - span.startMs < SHORTEST_SPEECH_MS) {
      this.#dropSpeech('too short');
      return;
    }
    this.#emit({ type: 'utterance', utterance });
    if (this.#bandwidth.isBandLimited === true && !this.#saidBandLimited) {
      this.#saidBandLimited = true;
      this.#emit({ type: 'band.limited' });
    }
    // Unless the app has asked for something else by now, the same may be said again.
    if (this.#prepared === prepared) this.#prepare();
  }

  #utteranceOf(
    decoded: Extract<Decoded, { ok: true }>,
    span: SpeechSpan,
    toClock: (sessionMs: number) => number,
    times: Pick<Utterance, 'startedAtMs' | 'endedAtMs' | 'decidedAtMs'>,
  ): Utterance {
    const words = wordsWithin(decoded.words, span);
    const levelDbfs = powerToDb(this.#speechPower / Math.max(1, this.#speechBlocks));
    const ratioDb = snrDb(levelDbfs, this.#meter.floorDbfs);
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

  #openStopEars(stopWords: readonly string[]): void {
    if (this.#recogniser === undefined) return;
    let seenTimes = 0;
    const opened = this.#recogniser.open(stopWords, (words) => {
      const stops = words.filter((word) => stopWords.includes(word));
      seenTimes = stops.length > 0 ? seenTimes + 1 : 0;
      const word = stops.at(-1);
      if (word === undefined || seenTimes < STOP_SEEN_TIMES) return;
      this.#endStopEars();
      this.#emit({ type: 'stop.heard', word });
    });
    if (!opened.ok) {
      this.#emit({ type: 'failed', failure: opened.failure });
      return;
    }
    // It learns the room's noise from the room; nothing of it is decoded.
    this.#stopCleaner = new StreamCleaner(this.#speakerMean);
    this.#stopCleaner.push(this.#room.recall());
    this.#stopSession = opened.session;
  }

  #endStopEars(): void {
    this.#stopSession?.dispose();
    this.#stopSession = undefined;
  }

  #clockAt(sample: number): number {
    return this.#positionAtMs - samplesToMs(this.#position - sample);
  }

  #emit(event: EarsEvent): void {
    for (const subscriber of [...this.#subscribers]) subscriber(event);
  }
}

function joined(blocks: readonly Float32Array[]): Float32Array {
  const out = new Float32Array(blocks.reduce((sum, block) => sum + block.length, 0));
  let at = 0;
  for (const block of blocks) {
    out.set(block, at);
    at += block.length;
  }
  return out;
}
