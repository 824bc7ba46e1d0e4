import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { type Actor, createActor } from 'xstate';
import type { LevelReading } from '../../audio/ears/level.ts';
import type { EarsEvent, Listener } from '../../audio/ears/listener.ts';
import type { Utterance } from '../../audio/ears/utterance.ts';
import type { Earcon } from '../../audio/mouth/earcons.ts';
import type { Speaker } from '../../audio/mouth/speaker.ts';
import type { Utterance as Speech } from '../../audio/mouth/voice.ts';
import { type Saying, type TurnEffects, turnsMachine } from '../../audio/turns.ts';
import { type Aside, asideFor, saidOver, sayWhatCanBeSaid } from '../../flows/asides.ts';
import type { WorkedFigure } from '../../flows/figures-asked/dialogue.ts';
import type { FigureValues } from '../../flows/figures-asked/values.ts';
import type { Channel, HeardEvent } from '../../flows/heard.ts';
import { tallyOf } from '../../flows/miss-log/tally.ts';
import { isOver, type Prompt } from '../../flows/prompt.ts';
import type { Expecting } from '../../grammar/expecting.ts';
import { type MeaningId, phrasesFor, taughtForm } from '../../grammar/lexicon.ts';
import type { Say } from '../../grammar/say.ts';
import type { Slots } from '../../grammar/understand.ts';
import { answersShown, pointedAt, saidOfAnswers } from './answers-shown.ts';
import { choicesFor } from './choices.ts';
import { type CountDesk, openCountDesk } from './count-desk.ts';
import { type FigureDesk, openFigureDesk } from './figure-desk.ts';
import type { JobSession, VoiceTrace } from './job-session.ts';
import { SESSION_LINES } from './lines.ts';
import { type Mouth, openMouth } from './mouth.ts';
import { watchSafety } from './safety-watch.ts';
import type { AnswersShown, Conversation, ConversationView, LastHeard, Turn, VoiceState } from './view.ts';

type Hearing = typeof import('./hearing.ts');
type Understanding = typeof import('./understanding.ts');

/** On the browser's own timeline, for whoever measures how long a person waits. */
export const MARKS = {
  ready: 'ears.ready',
  decided: 'utterance.decided',
  replyBegan: 'reply.began',
} as const;

/** What belongs to the tablet and not to the job. */
export interface Tablet {
  /** Gives the mouth the voice and loudness that were chosen. */
  dress(speaker: Speaker): void;
  /** Changes how the tablet sounds or looks, and says what came of it; undefined for every other meaning. */
  set(meaning: MeaningId): Say | undefined;
}

const PLAIN_TABLET: Tablet = { dress: () => {}, set: () => undefined };

/**
 * Joins a running job to the ears, the mouth and the screen. One event at a time comes in, by voice or by touch.
 * @param ofMachine what is kept of the machine and a figure need not ask for
 */
export function converse(
  session: JobSession,
  tablet: Tablet = PLAIN_TABLET,
  ofMachine: FigureValues = {},
): Conversation {
  return new JobConversation(session, tablet, ofMachine);
}

class JobConversation implements Conversation {
  readonly view;
  readonly #session: JobSession;
  readonly #desk: FigureDesk;
  readonly #counter: CountDesk;
  readonly #tablet: Tablet;
  readonly #turns: Actor<ReturnType<typeof turnsMachine>>;
  readonly #voice = signal<VoiceState>({ kind: 'off' });
  readonly #turn = signal<Turn>('quiet');
  readonly #level = signal<LevelReading | undefined>(undefined);
  readonly #lastHeard = signal<LastHeard | undefined>(undefined);
  /** What keeps the mouth from speaking, if something does. */
  readonly #speechTrouble = signal<string | undefined>(undefined);
  readonly #aside = signal<Aside | undefined>(undefined);
  /** The page of the answers that was turned to, and the question it belongs to. */
  readonly #page = signal({ state: '', page: 0 });
  readonly #watch;
  /** What is asked or answered aside now; a new identity for each asking. */
  #asked: Prompt;
  #askings = 0;
  #refusal: string = SESSION_LINES.notUnderstood;
  #hearing: Hearing | undefined;
  #understanding: Promise<Understanding> | undefined;
  #ears: Listener | undefined;
  #mouth: Mouth | undefined;
  #speech: Speech | undefined;
  /** An earcon that is still sounding; speech and listening wait for its end. */
  #earcon: Promise<void> | undefined;
  readonly #unsubscribe: (() => void) | undefined;
  readonly #onVisibility = () => this.#pageHidOrShowed();

  constructor(session: JobSession, tablet: Tablet, ofMachine: FigureValues) {
    this.#tablet = tablet;
    this.#session = session;
    this.#counter = openCountDesk(() => session.counted());
    this.#desk = openFigureDesk(
      () => tallyOf(session.counted()),
      () => session.figures(),
      ofMachine,
    );
    this.#asked = this.#prompt();
    this.#turns = createActor(turnsMachine(this.#effects()));
    this.#turns.subscribe((snapshot) => {
      this.#turn.value = turnOf(
        String(snapshot.value instanceof Object ? Object.keys(snapshot.value)[0] : snapshot.value),
      );
    });
    this.#turns.start();
    this.#watch = watchSafety({ steadyMs: () => performance.now(), wallMs: Date.now }, (reason) =>
      this.#tabletNoticed(reason),
    );
    document.addEventListener('visibilitychange', this.#onVisibility);
    this.#unsubscribe = session.happenings?.subscribe((count) => {
      if (count > 0) this.#ask();
    });
    this.view = computed(() => this.#currentView());
  }

  press(meaning: MeaningId, slots: Slots = {}): void {
    this.#watch.activity();
    // A glove does not feel a screen give way; a voice is answered by the reply itself, which should not wait.
    this.#sound('heard');
    this.#turns.send({ type: 'touch.answered' });
    this.#lastHeard.value = undefined;
    void this.#take({ type: meaning, slots, channel: { by: 'touch' } });
  }

  closeAside(): void {
    this.#watch.activity();
    if (this.#aside.value) this.#ask(undefined, [], 'brief');
  }

  async startVoice(): Promise<void> {
    if (this.#voice.value.kind === 'starting' || this.#voice.value.kind === 'on') return;
    this.#voice.value = { kind: 'starting', share: 0 };
    try {
      // The mouth first and without waiting: sound has to be asked for while the tap still counts.
      const opening = this.#mouth
        ? undefined
        : openMouth(({ message }) => {
            this.#speechTrouble.value = message;
          });
      const [mouth, hearing] = await Promise.all([opening, import('./hearing.ts')]);
      this.#mouth ??= mouth;
      if (mouth) this.#tablet.dress(mouth.speaker);
      this.#hearing = hearing;
      this.#understanding ??= import('./understanding.ts');
      this.#ears ??= this.#openEars(hearing);
      this.#ask();
      this.#turns.send({ type: 'resume' });
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

  stopVoice(): void {
    this.#turns.send({ type: 'suspend' });
    this.#ears?.stop();
    this.#ears = undefined;
    this.#voice.value = { kind: 'off' };
    this.#level.value = undefined;
  }

  dispose(): void {
    document.removeEventListener('visibilitychange', this.#onVisibility);
    this.#unsubscribe?.();
    this.#watch.stop();
    this.#turns.stop();
    this.#ears?.stop();
    this.#speech?.cut();
    this.#mouth?.close();
    this.#session.dispose();
  }

  // What comes in.

  /** Takes one event, by whatever way it came; what the job does not take is answered, never swallowed. */
  async #take(heard: HeardEvent, trace?: VoiceTrace): Promise<void> {
    const { context } = this.#session.snapshot.value;
    // An answer that was pointed at is that answer from here on.
    const event = { ...heard, type: pointedAt(heard.type, this.#answers()) ?? heard.type };
    const { type: meaning } = event;
    if (meaning === 'answers.more') {
      this.#turnPage();
      return;
    }
    const aside = asideFor(meaning, this.#prompt(), context, event.slots, this.#aside.value);
    if (aside) {
      this.#ask(aside);
      return;
    }
    const set = this.#tablet.set(meaning);
    if (set) {
      if (this.#mouth) this.#tablet.dress(this.#mouth.speaker);
      this.#ask(undefined, set, 'brief');
      return;
    }
    const turn = this.#desk.take(event, context);
    switch (turn.kind) {
      case 'asks':
        this.#ask();
        return;
      case 'answers':
        await this.#answerFigure(turn.worked, trace);
        return;
      case 'leaves':
        this.#ask(undefined, turn.say);
        return;
      case 'notTaken':
        this.#refuse(SESSION_LINES.notForNow);
        return;
      case 'forTheJob':
        break;
    }
    if (await this.#count(event, trace)) return;
    if (!this.#session.takes(event)) {
      this.#refuse(SESSION_LINES.notForNow);
      return;
    }
    const { kept } = await this.#session.send(event, trace);
    this.#ask(undefined, kept ? [] : [SESSION_LINES.notKept]);
  }

  /** Gives an event to the count of bales; whether it took it. */
  async #count(event: HeardEvent, trace?: VoiceTrace): Promise<boolean> {
    const turn = this.#counter.take(event);
    switch (turn.kind) {
      case 'forTheJob':
        return false;
      case 'counts': {
        const { kept } = await this.#session.noteCounted(turn.entry, trace);
        this.#counter.counted();
        this.#ask(undefined, kept ? [] : [SESSION_LINES.notKept]);
        return true;
      }
      case 'asks':
        this.#ask();
        return true;
      case 'tells':
        this.#ask({ kind: 'record', say: turn.say });
        return true;
      case 'leaves':
        this.#ask(undefined, turn.say);
        return true;
      case 'notTaken':
        this.#refuse(SESSION_LINES.notForNow);
        return true;
    }
  }

  async #answerFigure(worked: WorkedFigure, trace?: VoiceTrace): Promise<void> {
    const { kept } = await this.#session.noteFigure(worked, trace);
    const footnotes = worked.assumptions.map(({ says, standing, source }) =>
      source ? `${says} (${standing}: ${source})` : `${says} (${standing})`,
    );
    this.#ask({
      kind: 'figure',
      say: kept ? worked.say : [...worked.say, SESSION_LINES.notKept],
      footnotes: [...new Set(footnotes)],
    });
  }

  async #understand({ text, levelDbfs, snrDb, margin }: Utterance): Promise<void> {
    this.#watch.activity();
    const understand = (await this.#understanding)?.understand;
    if (!understand) return;
    const understanding = understand(text, this.#expecting(), margin);
    switch (understanding.outcome) {
      case 'understood': {
        const { meaning, slots, words } = understanding;
        const takenFor = taughtForm(pointedAt(meaning, this.#answers()) ?? meaning);
        this.#lastHeard.value = { words, outcome: 'taken', takenFor };
        const channel: Channel = { by: 'voice', margin, snrDb };
        void this.#take({ type: meaning, slots, channel }, { heardText: words, levelDbfs });
        return;
      }
      case 'ambiguous':
        this.#lastHeard.value = { words: understanding.words, outcome: 'ambiguous' };
        this.#refuse(SESSION_LINES.whichOfTwo);
        return;
      case 'refused':
        this.#lastHeard.value = { words: understanding.words, outcome: 'unclear' };
        this.#refuse(
          understanding.reason === 'value' ? SESSION_LINES.valueUnclear : SESSION_LINES.notUnderstood,
        );
        return;
    }
  }

  #refuse(line: string): void {
    this.#refusal = line;
    this.#sound('notHeard');
    this.#turns.send({ type: 'refused' });
  }

  #tabletNoticed(reason: Parameters<JobSession['voidLockout']>[0]): void {
    if (this.#session.prompt().safety === 'keepOut') return;
    this.#desk.end();
    this.#counter.end();
    void this.#session.voidLockout(reason).then(() => this.#ask());
  }

  /** A tablet nobody sees knows nothing of what happens at the machine. */
  #pageHidOrShowed(): void {
    if (document.visibilityState === 'hidden') {
      this.#turns.send({ type: 'suspend' });
      this.#tabletNoticed('void.slept');
    } else if (this.#mouth) {
      this.#turns.send({ type: 'resume' });
    }
  }

  // What is asked.

  /** Asks what the job asks now, whole or in short, or gives an aside in its place. */
  #ask(aside?: Aside, before: Say = [], form: 'question' | 'brief' = 'question'): void {
    const prompt = this.#prompt();
    this.#aside.value = aside;
    const notices = form === 'brief' ? before : [...before, ...prompt.notices];
    this.#put(
      prompt,
      aside
        ? { ...prompt, notices: [], question: aside.say }
        : { ...prompt, notices, question: prompt[form] },
    );
    // A job that is over listens no more, but what is asked of its record by touch is still said.
    if (aside && this.#mouth && isOver(prompt)) this.#turns.send({ type: 'resume' });
  }

  /** Turns to the next few answers and reads them out. */
  #turnPage(): void {
    const prompt = this.#prompt();
    this.#page.value = { state: prompt.state, page: this.#answers().page + 1 };
    this.#aside.value = undefined;
    const answers = this.#answers().shown.filter((answer) => answer !== 'number');
    this.#put(prompt, {
      ...prompt,
      notices: [],
      question: answers.map(({ meaning }) => taughtForm(meaning)),
    });
  }

  #put(prompt: Prompt, asked: Prompt): void {
    this.#asked = asked;
    this.#askings += 1;
    if (!this.#mouth) return;
    this.#turns.send({
      type: 'ask',
      prompt: {
        id: `${prompt.state}#${this.#askings}`,
        // A warning is heard to its end.
        mayBeInterrupted: prompt.state !== 'job.safety.unknown.voided',
      },
    });
  }

  /** The answers on the screen now. */
  #answers(): AnswersShown {
    const prompt = this.#prompt();
    const { state, page } = this.#page.value;
    const choices = choicesFor(prompt, this.#session.snapshot.value.context);
    return answersShown(prompt, choices, state === prompt.state ? page : 0);
  }

  /** What is understood now: what the dialogue asks for, and what the screen adds to it. */
  #expecting(): Expecting {
    const { expecting } = this.#prompt();
    const shown = this.#aside.value;
    const isCounting = this.#counter.tally.value !== undefined;
    const ofAnswers = shown || isCounting ? [] : saidOfAnswers(this.#answers());
    return { ...expecting, onScreen: [...saidOver(shown), ...ofAnswers] };
  }

  /** What is asked now: by the figure that has the floor, else by the job. */
  #prompt(): Prompt {
    return this.#desk.promptOver(this.#counter.promptOver(this.#session.prompt()));
  }

  #sayingOf(saying: Saying): Say {
    const { notices, question, brief } = this.#asked;
    switch (saying.kind) {
      case 'prompt':
        return [...notices, ...question];
      case 'short again':
        return [saying.after === 'not understood' ? this.#refusal : SESSION_LINES.noAnswer, ...brief];
      case 'what can be said':
        return sayWhatCanBeSaid(this.#asked);
      case 'big buttons':
        return [SESSION_LINES.answerByButton];
    }
  }

  // What the turns have done for them.

  #effects(): TurnEffects {
    return {
      prepareEars: () => {
        const expecting = this.#expecting();
        const hearing = this.#hearing;
        if (hearing)
          this.#ears?.listenFor(hearing.recogniserList(expecting), { canGoOn: hearing.canGoOn(expecting) });
      },
      shutEars: (mayStopCutIn) => {
        const stopWords = mayStopCutIn ? this.#stopWords() : undefined;
        this.#ears?.shut(stopWords);
      },
      openEars: () => {
        this.#sound('listening');
        this.#afterEarcon(() => {
          if (this.#turn.value !== 'listening') return;
          this.#ears?.open();
          this.#prepareReplies();
        });
      },
      speak: (_, saying) => this.#speak(this.#sayingOf(saying)),
      hush: () => {
        const speech = this.#speech;
        this.#speech = undefined;
        speech?.cut();
      },
      decide: (utterance) => void this.#understand(utterance),
      // The answers are buttons in every state, so nothing more has to come up.
      showBigButtons: () => {},
    };
  }

  #speak(say: Say): void {
    const asking = this.#askings;
    this.#afterEarcon(() => {
      if (asking !== this.#askings) return;
      const speech = this.#mouth?.speaker.speak(say);
      this.#speech = speech;
      void speech?.started.then((at) => {
        if (at === 'never') return;
        this.#speechTrouble.value = undefined;
        performance.mark(MARKS.replyBegan, { startTime: at });
      });
      void speech?.finished.then(() => {
        if (this.#speech !== speech) return;
        this.#turns.send(isOver(this.#asked) ? { type: 'suspend' } : { type: 'mouth.finished' });
      });
    });
  }

  /** Readies what will be said to each answer that is asked for, so that the reply starts at once. */
  #prepareReplies(): void {
    const job = this.#session.prompt();
    const { meanings } = this.#prompt().expecting;
    // While bales are counted the reply is two words and a number, which are always at hand.
    if (this.#counter.tally.value && !this.#desk.dialogue.value) return;
    const isFigure = this.#desk.dialogue.value !== undefined;
    const replies = meanings
      .map((type) => ({ type, slots: {}, channel: { by: 'touch' } }) as const)
      .flatMap((event) => {
        if (isFigure) return this.#desk.preview(event, job) ?? [];
        return this.#session.takes(event) ? [this.#session.preview(event)] : [];
      });
    this.#mouth?.speaker.prepare(replies.map(({ notices, question }) => [...notices, ...question]));
  }

  /** An earcon begins at once; what is spoken or listened for next waits for its end. */
  #sound(earcon: Earcon): void {
    const sounding = this.#mouth?.speaker.earcon(earcon).finally(() => {
      if (this.#earcon === sounding) this.#earcon = undefined;
    });
    this.#earcon = sounding;
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
    const ears = hearing.openEars();
    ears.subscribe((event) => this.#heard(event, hearing));
    return ears;
  }

  #heard(event: EarsEvent, hearing: Hearing): void {
    switch (event.type) {
      case 'model.progress':
        this.#voice.value = { kind: 'starting', share: event.gotBytes / event.wantedBytes };
        return;
      case 'ready':
        performance.mark(MARKS.ready, { detail: { modelLoadMs: event.loadMs } });
        this.#voice.value = { kind: 'on', isWarm: false };
        return;
      case 'listening':
        this.#voice.value = { kind: 'on', isWarm: event.isRoomKnown };
        return;
      case 'level':
        this.#level.value = event.reading;
        return;
      case 'speech.started':
      case 'speech.dropped':
        this.#turns.send({ type: event.type });
        return;
      case 'utterance':
        // A cough or a knock says nothing, and is answered by nothing.
        performance.mark(MARKS.decided, { startTime: event.utterance.decidedAtMs });
        if (event.utterance.text === '') this.#turns.send({ type: 'speech.dropped' });
        else this.#turns.send({ type: 'utterance', utterance: event.utterance });
        return;
      case 'stop.heard':
        this.#turns.send({ type: 'stop.heard' });
        void this.#take({ type: 'stop', slots: {}, channel: { by: 'voice', margin: 1, snrDb: 0 } });
        return;
      case 'band.limited':
        this.#fail(SESSION_LINES.narrowBand);
        return;
      case 'failed':
        this.#turns.send({ type: 'ears.failed' });
        this.#fail(hearing.describeFailure(event.failure));
        return;
      case 'recovered':
        this.#voice.value = { kind: 'on', isWarm: false };
        this.#turns.send({ type: 'ears.recovered' });
        return;
      case 'paused':
      case 'resumed':
        return;
    }
  }

  #fail(sentence: string): void {
    this.#voice.value = { kind: 'failed', sentence };
  }

  #currentView(): ConversationView {
    const { context } = this.#session.snapshot.value;
    const prompt = this.#prompt();
    return {
      prompt,
      context,
      turn: this.#turn.value,
      voice: this.#voice.value,
      answers: this.#answers(),
      record: this.#session.record.value,
      ...present('level', this.#level),
      ...present('speechTrouble', this.#speechTrouble),
      ...present('lastHeard', this.#lastHeard),
      ...present('aside', this.#aside),
      ...present('tally', this.#counter.tally),
    };
  }
}

function present<K extends string, V>(key: K, { value }: ReadonlySignal<V | undefined>): { [P in K]?: V } {
  return value === undefined ? {} : ({ [key]: value } as { [P in K]?: V });
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
    default:
      return 'quiet';
  }
}
