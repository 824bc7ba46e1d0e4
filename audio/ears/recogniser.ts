import type { KaldiRecognizer, Model } from 'vosk-browser';
import type { RecognizerMessage, ServerMessage } from 'vosk-browser/dist/interfaces';
import { chunkMs } from '../command-model/decode-protocol.ts';
import { addDither } from './dither.ts';
import type { EarsFailure } from './failures.ts';
import { type DecodedWord, UNKNOWN } from './heard-words.ts';
import { forgetModel, type ModelProgress, readModelWords, storeModel } from './model-file.ts';
import { holdingModels } from './model-lock.ts';
import { EARS_RATE_HZ, msToSamples } from './sound-format.ts';
import type { SpeechModel } from './speech-model.ts';

/**
 * The recogniser: the one place that knows vosk-browser. The library hangs where it should fail, keeps what it should drop and
 * reports nothing by request, so everything here has a clock, an owner and an end.
 */

export type Decoded =
  | { readonly ok: true; readonly words: readonly DecodedWord[] }
  | { readonly ok: false; readonly failure: EarsFailure };

/** One list of phrases being listened for: one utterance is decoded with it, and it is disposed of always. */
export interface DecodingSession {
  /**
   * Decodes an utterance, all of it, and says everything that was heard. Call it once.
   * @param samples at the ears' rate
   */
  decode(samples: Float32Array): Promise<Decoded>;
  /** Frees it, finished or not; sound not decoded yet is dropped. */
  dispose(): void;
}

export type OpenedSession =
  | { readonly ok: true; readonly session: DecodingSession }
  | { readonly ok: false; readonly failure: EarsFailure };

/** A loaded model. */
export interface Recogniser {
  readonly model: SpeechModel;
  /** Milliseconds from stored archive to ready, self-test included. */
  readonly loadMs: number;
  /** The words of a list that the model lacks. */
  unknownIn(list: readonly string[]): readonly string[];
  /**
   * Starts listening for a list.
   * @param list words of the model's graph; {@link UNKNOWN} is added. A word the model lacks refuses the whole list: the
   * library would drop it with a console warning and be deaf to it.
   */
  open(list: readonly string[]): OpenedSession;
  /** Frees everything. */
  close(): void;
}

export type LoadedRecogniser =
  /** `passedOver` is what kept the first model from loading, where another had to take its place. */
  | { readonly ok: true; readonly recogniser: Recogniser; readonly passedOver?: EarsFailure }
  | { readonly ok: false; readonly failure: EarsFailure };

export interface RecogniserSettings {
  /** The models to have, the most wanted first: the first that loads is used, and all of them are kept on the tablet. */
  readonly models: readonly [SpeechModel, ...SpeechModel[]];
  readonly onProgress?: ModelProgress;
  /** Called once if the recogniser dies later. It is closed by then. */
  readonly onDeath: (failure: EarsFailure) => void;
}

/** From a stored archive to a model that answers; the first time a large one takes long to unpack. */
const LOAD_WITHIN_MS = 45_000;
const LOAD_MORE_MS_A_BYTE = 1e-3;

/** One block takes some 40 ms to decode; this long and the worker hangs (a lattice exploded) or is dead. */
const ANSWER_WITHIN_MS = 8_000;

/** Blocks sent ahead of their answers: enough to keep the worker busy, few enough to be dropped quickly. */
const MOST_IN_FLIGHT = 3;

/** Only warnings: they name words the model lacks. */
const LOG_LEVEL = -1;

/**
 * Loads a model and proves that it decodes. Fetches the archive if the tablet does not hold it; a stored model that
 * does not load is thrown away and fetched once more; where that does not help the next one is tried. Never rejects.
 */
export async function loadRecogniser(settings: RecogniserSettings): Promise<LoadedRecogniser> {
  const load = async (): Promise<LoadedRecogniser> => {
    const [first, ...others] = settings.models;
    const loaded = await loadFresh(first, settings);
    if (loaded.ok) return loaded;
    for (const other of others) {
      const instead = await loadFresh(other, settings);
      if (instead.ok) return { ...instead, passedOver: loaded.failure };
    }
    return loaded;
  };
  try {
    return await holdingModels(load);
  } catch (error) {
    return { ok: false, failure: { kind: 'recogniser-unloadable', detail: messageOf(error) } };
  }
}

async function loadFresh(model: SpeechModel, settings: RecogniserSettings): Promise<LoadedRecogniser> {
  const first = await loadOnce(model, settings);
  if (first.ok || first.failure.kind !== 'recogniser-unloadable') return first;
  await forgetModel(model.archive);
  return loadOnce(model, settings);
}

async function loadOnce(model: SpeechModel, settings: RecogniserSettings): Promise<LoadedRecogniser> {
  const kept = settings.models.map(({ archive }) => archive);
  const stored = await storeModel(model.archive, settings.onProgress, kept);
  if (!stored.ok) return stored;
  const startedAt = performance.now();
  let owner: ModelOwner | undefined;
  try {
    // 5.8 MB with the engine inside: fetched only once voice is wanted.
    const { Model } = await import('vosk-browser');
    owner = new ModelOwner(new Model(stored.name, LOG_LEVEL), model, settings.onDeath);
    await owner.loaded();
    const vocabulary = await readModelWords(stored.name);
    await selfTest(owner, vocabulary);
    return { ok: true, recogniser: owner.asRecogniser(performance.now() - startedAt, vocabulary) };
  } catch (error) {
    owner?.close();
    return { ok: false, failure: { kind: 'recogniser-unloadable', detail: messageOf(error) } };
  }
}

/** "Loaded" does not mean usable: a missing graph or wrong feature size shows only when sound comes. */
async function selfTest(owner: ModelOwner, vocabulary: ReadonlySet<string>): Promise<void> {
  const someWord = [...vocabulary].find((word) => word !== UNKNOWN);
  if (someWord === undefined || !vocabulary.has(UNKNOWN)) throw new Error('the model has no words');
  const session = owner.openSession([someWord, UNKNOWN]);
  const quiet = new Float32Array(msToSamples(500));
  addDither(quiet);
  const decoded = await session.decode(quiet);
  session.dispose();
  if (!decoded.ok) throw new Error(detailOf(decoded.failure));
}

/** Owns a model's worker: its sessions, its death. */
class ModelOwner {
  readonly #model: Model;
  readonly #kind: SpeechModel;
  readonly #onDeath: (failure: EarsFailure) => void;
  readonly #sessions = new Set<VoskSession>();
  readonly #loaded: Promise<void>;
  #state: 'loading' | 'alive' | 'closed' = 'loading';

  constructor(model: Model, kind: SpeechModel, onDeath: (failure: EarsFailure) => void) {
    this.#model = model;
    this.#kind = kind;
    this.#onDeath = onDeath;
    const withinMs = LOAD_WITHIN_MS + LOAD_MORE_MS_A_BYTE * kind.archive.bytes;
    this.#loaded = new Promise((resolve, reject) => {
      const timer = setTimeout(() => reject(new Error('it did not answer in time')), withinMs);
      const settle = (finish: () => void) => {
        clearTimeout(timer);
        finish();
      };
      model.addEventListener('load', () => settle(resolve));
      model.addEventListener('error', (event) => {
        const message = serverMessageOf(event);
        // A session that was removed may still fail a last block; nobody waits for it.
        if (message.event === 'error' && 'recognizerId' in message && message.recognizerId !== undefined)
          return;
        const detail = message.event === 'error' && message.error ? message.error : 'no reason given';
        settle(() => reject(new Error(detail)));
        this.die({ kind: 'recogniser-died', detail });
      });
      // A worker blocked by the page's content policy, or out of memory, says so only here.
      workerOf(model).addEventListener('error', (event) => {
        const detail = event.message || 'its worker stopped';
        settle(() => reject(new Error(detail)));
        this.die({ kind: 'recogniser-died', detail });
      });
    });
    // A failure after loading is told by die(); this promise is then nobody's.
    this.#loaded.catch(() => {});
  }

  async loaded(): Promise<void> {
    await this.#loaded;
    this.#state = 'alive';
  }

  openSession(list: readonly string[]): VoskSession {
    const recognizer = new this.#model.KaldiRecognizer(EARS_RATE_HZ, JSON.stringify(list));
    recognizer.setWords(true);
    const session = new VoskSession(recognizer, this.#kind.timeScale, {
      onFailure: (failure) => this.die(failure),
      onDisposed: () => this.#sessions.delete(session),
    });
    this.#sessions.add(session);
    return session;
  }

  die(failure: EarsFailure): void {
    if (this.#state !== 'alive') return;
    this.close(failure);
    this.#onDeath(failure);
  }

  close(failure: EarsFailure = { kind: 'recogniser-died', detail: 'it was closed' }): void {
    if (this.#state === 'closed') return;
    this.#state = 'closed';
    for (const session of [...this.#sessions]) session.abandon(failure);
    // The library's own terminate() waits for its turn and, before a model is loaded, never comes.
    workerOf(this.#model).terminate();
  }

  asRecogniser(loadMs: number, vocabulary: ReadonlySet<string>): Recogniser {
    const unknownIn = (list: readonly string[]) =>
      list.flatMap((entry) => entry.split(' ')).filter((word) => !vocabulary.has(word));
    return {
      model: this.#kind,
      loadMs,
      unknownIn,
      open: (list) => {
        const words = [...new Set([...list, UNKNOWN])];
        const unknown = unknownIn(words);
        if (unknown.length > 0) return { ok: false, failure: { kind: 'phrase-unknown', words: unknown } };
        if (this.#state !== 'alive') {
          return { ok: false, failure: { kind: 'recogniser-died', detail: 'it was closed' } };
        }
        return { ok: true, session: this.openSession(words) };
      },
      close: () => this.close(),
    };
  }
}

/** What a session tells its owner. */
interface SessionOwner {
  onFailure(failure: EarsFailure): void;
  onDisposed(): void;
}

/** One KaldiRecognizer. The worker answers every message in order and names no request, so answers are counted off. */
class VoskSession implements DecodingSession {
  readonly #recognizer: KaldiRecognizer;
  readonly #timeScale: number;
  readonly #owner: SessionOwner;
  readonly #waiting: Float32Array[] = [];
  readonly #words: DecodedWord[] = [];
  /** What was sent and is not answered yet. */
  readonly #inFlight: ('block' | 'final')[] = [];
  #watchdog: ReturnType<typeof setTimeout> | undefined;
  #settle: ((decoded: Decoded) => void) | undefined;
  #isDisposed = false;

  constructor(recognizer: KaldiRecognizer, timeScale: number, owner: SessionOwner) {
    this.#recognizer = recognizer;
    this.#timeScale = timeScale;
    this.#owner = owner;
    recognizer.on('partialresult', (message) => this.#answered(message));
    recognizer.on('result', (message) => this.#answered(message));
    recognizer.on('error', (message) => this.#answered(message));
  }

  decode(samples: Float32Array): Promise<Decoded> {
    if (this.#settle !== undefined || this.#isDisposed) throw new Error('A session decodes one utterance.');
    const chunk = msToSamples(chunkMs);
    for (let at = 0; at < samples.length; at += chunk) this.#waiting.push(samples.slice(at, at + chunk));
    return new Promise((resolve) => {
      this.#settle = resolve;
      this.#send();
    });
  }

  dispose(): void {
    if (this.#isDisposed) return;
    this.abandon({ kind: 'recogniser-died', detail: 'the session was closed' });
    this.#recognizer.remove();
  }

  /** Ends it without a word to a worker that is gone. */
  abandon(failure: EarsFailure): void {
    if (this.#isDisposed) return;
    this.#isDisposed = true;
    clearTimeout(this.#watchdog);
    this.#waiting.length = 0;
    this.#inFlight.length = 0;
    this.#settle?.({ ok: false, failure });
    this.#owner.onDisposed();
  }

  #send(): void {
    while (this.#inFlight.length < MOST_IN_FLIGHT && !this.#inFlight.includes('final')) {
      const block = this.#waiting.shift();
      this.#inFlight.push(block === undefined ? 'final' : 'block');
      if (block === undefined) this.#recognizer.retrieveFinalResult();
      else this.#recognizer.acceptWaveformFloat(block, EARS_RATE_HZ);
    }
    if (this.#watchdog === undefined) this.#watch();
  }

  #watch(): void {
    const dueAt = performance.now() + ANSWER_WITHIN_MS;
    this.#watchdog = setTimeout(() => {
      // A page that was frozen wakes to a late timer and answers still on their way: they get their time again.
      if (performance.now() > dueAt + 1_000) this.#watch();
      else this.#owner.onFailure({ kind: 'recogniser-stuck' });
    }, ANSWER_WITHIN_MS);
  }

  #answered(message: RecognizerMessage): void {
    if (this.#isDisposed) return;
    clearTimeout(this.#watchdog);
    this.#watchdog = undefined;
    if (message.event === 'error') {
      this.#owner.onFailure({ kind: 'recogniser-died', detail: message.error || 'no reason given' });
      return;
    }
    const answered = this.#inFlight.shift();
    if (message.event === 'result') this.#keep(message.result.result ?? []);
    if (answered === 'final') this.#settle?.({ ok: true, words: this.#words });
    else this.#send();
  }

  /** Results come in the middle too, where the library saw a pause; all of them together are what was said. */
  #keep(words: readonly { word: string; start: number; end: number; conf: number }[]): void {
    for (const { word, start, end, conf } of words) {
      const msPerUnit = 1_000 * this.#timeScale;
      this.#words.push({ word, startMs: start * msPerUnit, endMs: end * msPerUnit, confidence: conf });
    }
  }
}

/** The worker behind a model. The types call it private; without it a hung model could never be ended. */
function workerOf(model: Model): Worker {
  return (model as unknown as { readonly worker: Worker }).worker;
}

function serverMessageOf(event: Event): ServerMessage {
  return (event as CustomEvent<ServerMessage>).detail;
}

function detailOf(failure: EarsFailure): string {
  return 'detail' in failure ? failure.detail : failure.kind;
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
