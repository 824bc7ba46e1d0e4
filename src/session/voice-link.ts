import { signal } from '@preact/signals';
import { type Actor, createActor } from 'xstate';
import type { LevelReading } from '../../audio/ears/level.ts';
import type { EarsEvent, Listener } from '../../audio/ears/listener.ts';
import type { Utterance } from '../../audio/ears/utterance.ts';
import type { PackedFieldModel } from '../../audio/field-model/packed-field-model.ts';
import type { Earcon } from '../../audio/mouth/earcons.ts';
import type { Speaker } from '../../audio/mouth/speaker.ts';
import type { Utterance as Speech } from '../../audio/mouth/voice.ts';
import { type Prompt as Asking, type Saying, type TurnEffects, turnsMachine } from '../../audio/turns.ts';
import type { Expecting } from '../../grammar/expecting.ts';
import { phrasesFor } from '../../grammar/lexicon.ts';
import type { Say } from '../../grammar/say.ts';
import { SESSION_LINES } from './lines.ts';
import { type Mouth, openMouth } from './mouth.ts';
import type { Turn, VoiceState } from './view.ts';

type Hearing = typeof import('./hearing.ts');

/** On the browser's own timeline, for whoever measures how long a person waits. */
export const MARKS = {
  ready: 'ears.ready',
  decided: 'utterance.decided',
  replyBegan: 'reply.began',
} as const;

/** The dialogue that the voice carries: what is to be said and listened for now, and who takes what was heard. */
export interface Spoken {
  expecting(): Expecting;
  wordsOf(saying: Saying): Say;
  /** What may have to be said next, likeliest first, so that it can be readied. */
  replies(): readonly Say[];
  /** Nothing is listened for any more once this has been said. */
  isOver(): boolean;
  /** Takes what was heard to a meaning; an asking or a refusal follows. */
  decide(utterance: Utterance): void;
  stopHeard(): void;
  /** Dresses the mouth in the chosen voice and loudness. */
  dress(speaker: Speaker): void;
  /** The field model, where it is chosen to listen. */
  fieldModel(): PackedFieldModel | undefined;
}

/** Ears, mouth and whose turn it is, joined to one dialogue. Without a voice it does nothing, and touch goes on. */
export class VoiceLink {
  readonly voice = signal<VoiceState>({ kind: 'off' });
  readonly turn = signal<Turn>('quiet');
  readonly level = signal<LevelReading | undefined>(undefined);
  /** What keeps the mouth from speaking, if something does. */
  readonly speechTrouble = signal<string | undefined>(undefined);
  readonly #spoken: Spoken;
  readonly #turns: Actor<ReturnType<typeof turnsMachine>>;
  #hearing: Hearing | undefined;
  #ears: Listener | undefined;
  #mouth: Mouth | undefined;
  #speech: Speech | undefined;
  /** An earcon that is still sounding; speech and listening wait for its end. */
  #earcon: Promise<void> | undefined;
  #asked = '';
  /** What there is to know of the ears although they hear, until somebody was heard. */
  #earsNote: string | undefined;

  constructor(spoken: Spoken) {
    this.#spoken = spoken;
    this.#turns = createActor(turnsMachine(this.#effects()));
    this.#turns.subscribe((snapshot) => {
      this.turn.value = turnOf(
        String(snapshot.value instanceof Object ? Object.keys(snapshot.value)[0] : snapshot.value),
      );
    });
    this.#turns.start();
  }

  /** Whether there is a mouth, be it on or suspended. */
  get hasMouth(): boolean {
    return this.#mouth !== undefined;
  }

  /** Opens microphone and voice; must be called from a tap. `ask` is called once there is a mouth to ask with. */
  async start(ask: () => void): Promise<void> {
    if (this.voice.value.kind === 'starting' || this.voice.value.kind === 'on') return;
    this.voice.value = { kind: 'starting', share: 0 };
    try {
      // The mouth first and without waiting: sound has to be asked for while the tap still counts.
      const opening = this.#mouth
        ? undefined
        : openMouth(({ message }) => {
            this.speechTrouble.value = message;
          });
      const [mouth, hearing] = await Promise.all([opening, import('./hearing.ts')]);
      this.#mouth ??= mouth;
      this.dress();
      this.#hearing = hearing;
      this.#ears ??= this.#openEars(hearing);
      ask();
      this.resume();
      const started = await this.#ears.start();
      if (!started.ok) {
        this.#turns.send({ type: 'ears.failed' });
        this.#fail(hearing.describeFailure(started.failure));
      }
    } catch (error) {
      this.#turns.send({ type: 'ears.failed' });
      this.#fail(`${error instanceof Error ? error.message : String(error)} Touch still works.`);
    }
  }

  /** Closes the microphone and silences the mouth. */
  stop(): void {
    this.suspend();
    this.#ears?.stop();
    this.#ears = undefined;
    this.voice.value = { kind: 'off' };
    this.level.value = undefined;
  }

  dispose(): void {
    this.#turns.stop();
    this.#ears?.stop();
    this.#speech?.cut();
    this.#mouth?.close();
  }

  /** Asks something new, or the same again; cuts into whatever is being said. */
  ask(asking: Asking): void {
    this.#asked = asking.id;
    if (this.#mouth) this.#turns.send({ type: 'ask', prompt: asking });
  }

  /** What was heard or pressed is not taken here. */
  refused(): void {
    this.sound('notHeard');
    this.#turns.send({ type: 'refused' });
  }

  answeredByTouch(): void {
    // A glove does not feel a screen give way; a voice is answered by the reply itself, which should not wait.
    this.sound('heard');
    this.#turns.send({ type: 'touch.answered' });
  }

  /** Whether nobody is speaking: a person may, but has not begun. */
  get isWaiting(): boolean {
    return this.turn.value === 'listening' || this.turn.value === 'resting';
  }

  /** Whether answers by voice are not waited for. */
  get isResting(): boolean {
    return this.turn.value === 'resting';
  }

  /** Has nothing but stop words waited for, or answers by voice again from the next question on. */
  rest(isResting: boolean): void {
    this.#turns.send({ type: isResting ? 'voice.rests' : 'voice.returns' });
  }

  suspend(): void {
    this.#turns.send({ type: 'suspend' });
  }

  resume(): void {
    this.#turns.send({ type: 'resume' });
  }

  dress(): void {
    if (this.#mouth) this.#spoken.dress(this.#mouth.speaker);
  }

  /** An earcon begins at once; what is spoken or listened for next waits for its end. */
  sound(earcon: Earcon): void {
    const sounding = this.#mouth?.speaker.earcon(earcon).finally(() => {
      if (this.#earcon === sounding) this.#earcon = undefined;
    });
    this.#earcon = sounding;
  }

  // What the turns have done for them.

  #effects(): TurnEffects {
    return {
      prepareEars: () => {
        const expecting = this.#spoken.expecting();
        const hearing = this.#hearing;
        if (hearing)
          this.#ears?.listenFor(hearing.recogniserList(expecting), { canGoOn: hearing.canGoOn(expecting) });
      },
      shutEars: (mayStopCutIn) => {
        const stopWords = mayStopCutIn ? this.#stopWords() : undefined;
        this.#ears?.shut(stopWords);
      },
      giveFloor: () => this.sound('listening'),
      openEars: () => {
        // On a slow tablet the tone may sound still; by its end the floor may be taken.
        if (!this.#earcon) this.#listen();
        else
          void this.#earcon.then(() => {
            if (this.turn.value === 'listening') this.#listen();
          });
      },
      restEars: () => this.#ears?.open(),
      speak: (asking, saying) => this.#speak(asking, this.#spoken.wordsOf(saying)),
      hush: () => {
        const speech = this.#speech;
        this.#speech = undefined;
        speech?.cut();
      },
      decide: (utterance) => this.#spoken.decide(utterance),
      // The answers are buttons in every state, so nothing more has to come up.
      showBigButtons: () => {},
    };
  }

  #listen(): void {
    this.#ears?.open();
    this.#mouth?.speaker.prepare(this.#spoken.replies());
  }

  #speak(asking: Asking, say: Say): void {
    this.#afterEarcon(() => {
      if (asking.id !== this.#asked) return;
      const speech = this.#mouth?.speaker.speak(say);
      this.#speech = speech;
      void speech?.started.then((at) => {
        if (at === 'never') return;
        this.speechTrouble.value = undefined;
        performance.mark(MARKS.replyBegan, { startTime: at });
      });
      void speech?.finished.then(() => {
        if (this.#speech !== speech) return;
        this.#turns.send(this.#spoken.isOver() ? { type: 'suspend' } : { type: 'mouth.finished' });
      });
    });
  }

  #afterEarcon(act: () => void): void {
    if (this.#earcon) void this.#earcon.then(act);
    else act();
  }

  #stopWords(): readonly string[] {
    const hearing = this.#hearing;
    return hearing ? phrasesFor('stop').map(({ words }) => hearing.graphToken(words)) : [];
  }

  // The ears.

  #openEars(hearing: Hearing): Listener {
    const ears = hearing.openEars(this.#spoken.fieldModel());
    ears.subscribe((event) => this.#heard(event, hearing));
    return ears;
  }

  #heard(event: EarsEvent, hearing: Hearing): void {
    switch (event.type) {
      case 'model.progress':
        this.voice.value = { kind: 'starting', share: event.gotBytes / event.wantedBytes };
        return;
      case 'ready':
        performance.mark(MARKS.ready, { detail: { modelLoadMs: event.loadMs } });
        this.#on(false);
        return;
      case 'listening':
        this.#on(event.isRoomKnown);
        return;
      case 'model.passedOver':
        this.#earsNote = hearing.describePassedOver(event.failure);
        return;
      case 'sound.altered':
        this.#earsNote = hearing.ALTERED_SOUND;
        return;
      case 'level':
        this.level.value = event.reading;
        return;
      case 'speech.started':
      case 'speech.dropped':
        this.#turns.send({ type: event.type });
        return;
      case 'utterance':
        // A cough or a knock says nothing, and is answered by nothing.
        performance.mark(MARKS.decided, { startTime: event.utterance.decidedAtMs });
        this.#dropEarsNote();
        if (event.utterance.text === '') this.#turns.send({ type: 'speech.dropped' });
        else this.#turns.send({ type: 'utterance', utterance: event.utterance });
        return;
      case 'stop.heard':
        this.#turns.send({ type: 'stop.heard' });
        this.#spoken.stopHeard();
        return;
      case 'band.limited':
        this.#fail(SESSION_LINES.narrowBand);
        return;
      case 'failed':
        this.#turns.send({ type: 'ears.failed' });
        this.#fail(hearing.describeFailure(event.failure));
        return;
      case 'recovered':
        this.#on(false);
        this.#turns.send({ type: 'ears.recovered' });
        return;
      case 'paused':
      case 'resumed':
        return;
    }
  }

  #on(isWarm: boolean): void {
    const note = this.#earsNote;
    this.voice.value = { kind: 'on', isWarm, ...(note === undefined ? {} : { note }) };
  }

  #dropEarsNote(): void {
    if (this.#earsNote === undefined) return;
    this.#earsNote = undefined;
    if (this.voice.value.kind === 'on') this.#on(this.voice.value.isWarm);
  }

  #fail(sentence: string): void {
    this.voice.value = { kind: 'failed', sentence };
  }
}

function turnOf(state: string): Turn {
  switch (state) {
    case 'speaking':
    case 'echoTail':
      return 'speaking';
    case 'listening':
      return 'listening';
    case 'hearing':
      return 'hearing';
    case 'deciding':
      return 'thinking';
    case 'resting':
      return 'resting';
    default:
      return 'quiet';
  }
}
