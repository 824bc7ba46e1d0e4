import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Utterance } from '../../audio/ears/utterance.ts';
import type { PackedFieldModel } from '../../audio/field-model/packed-field-model.ts';
import type { Speaker } from '../../audio/mouth/speaker.ts';
import type { Saying } from '../../audio/turns.ts';
import { type Aside, asideFor, saidOver, sayWhatCanBeSaid } from '../../flows/asides.ts';
import type { WorkedFigure } from '../../flows/figures-asked/dialogue.ts';
import type { FigureValues } from '../../flows/figures-asked/values.ts';
import type { Channel, HeardEvent } from '../../flows/heard.ts';
import type { HearingChoice } from '../../flows/hearing-policy.ts';
import { countedBefore } from '../../flows/miss-log/offer.ts';
import { missCountOf, tallyOf } from '../../flows/miss-log/tally.ts';
import { isOver, type Prompt } from '../../flows/prompt.ts';
import { sayWorded, USUAL_WORDING, type Wording, worded } from '../../flows/wording.ts';
import type { Expecting } from '../../grammar/expecting.ts';
import { type HearingGrade, worseOf } from '../../grammar/hearing-grade.ts';
import { type MeaningId, taughtForm } from '../../grammar/lexicon.ts';
import type { Say } from '../../grammar/say.ts';
import type { Slots } from '../../grammar/understand.ts';
import { answersShown, pointedAt, saidOfAnswers } from './answers-shown.ts';
import { choicesFor } from './choices.ts';
import { type CountDesk, openCountDesk } from './count-desk.ts';
import { type FigureDesk, openFigureDesk } from './figure-desk.ts';
import { type HearingDesk, openHearingDesk } from './hearing-desk.ts';
import type { JobSession, VoiceTrace } from './job-session.ts';
import { SESSION_LINES } from './lines.ts';
import { watchSafety } from './safety-watch.ts';
import type { AnswersShown, Conversation, ConversationView, LastHeard } from './view.ts';
import { type Spoken, VoiceLink } from './voice-link.ts';

type Understanding = typeof import('./understanding.ts');

/** What belongs to the tablet and not to the job. */
export interface Tablet {
  /** Gives the mouth the voice and loudness that were chosen. */
  dress(speaker: Speaker): void;
  /** Changes how the tablet sounds or looks, and says what came of it; undefined for every other meaning. */
  set(meaning: MeaningId): Say | undefined;
  /** How somebody wants spoken answers taken, now. */
  hearing(): HearingChoice;
  /** How units and sides are called now; read anew for everything that is said or shown. */
  wording(): Wording;
  /** The field model, where it is chosen to listen. */
  fieldModel(): PackedFieldModel | undefined;
}

const PLAIN_TABLET: Tablet = {
  dress: () => {},
  set: () => undefined,
  wording: () => USUAL_WORDING,
  fieldModel: () => undefined,
  hearing: () => 'automatic',
};

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
  /** Both are asked for many times between two answers, and worked out once. */
  readonly #promptNow = computed(() => this.#hearing.promptOver(this.#promptBehind()));
  readonly #answersNow = computed(() => this.#workOutAnswers());
  readonly #session: JobSession;
  readonly #desk: FigureDesk;
  readonly #counter: CountDesk;
  readonly #hearing: HearingDesk;
  readonly #tablet: Tablet;
  readonly #link: VoiceLink;
  readonly #lastHeard = signal<LastHeard | undefined>(undefined);
  readonly #aside = signal<Aside | undefined>(undefined);
  /** What was last said of the hearing, while it is new. */
  readonly #announced = signal<Say>([]);
  /** The page of the answers that was turned to, and the question it belongs to. */
  readonly #page = signal({ state: '', page: 0 });
  readonly #watch;
  /** What is asked or answered aside now; a new identity for each asking. */
  #asked: Prompt;
  #askings = 0;
  #refusal: Say = [SESSION_LINES.notUnderstood];
  #understanding: Promise<Understanding> | undefined;
  readonly #unsubscribe: (() => void) | undefined;
  readonly #onVisibility = () => this.#pageHidOrShowed();

  constructor(session: JobSession, tablet: Tablet, ofMachine: FigureValues) {
    this.#tablet = tablet;
    this.#session = session;
    this.#counter = openCountDesk(() => session.counted());
    this.#desk = openFigureDesk(
      () => tallyOf(countedBefore(session.snapshot.value.context, session.counted())),
      () => session.figures(),
      ofMachine,
      () => tablet.wording().units,
    );
    this.#hearing = openHearingDesk(() => tablet.hearing());
    this.#asked = this.#prompt();
    this.#link = new VoiceLink(this.#spoken());
    this.#link.level.subscribe((reading) => {
      if (reading?.hearing) this.#roomHeard(reading.hearing);
    });
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
    this.#link.answeredByTouch();
    this.#lastHeard.value = undefined;
    void this.#take({ type: meaning, slots, channel: { by: 'touch' } });
  }

  closeAside(): void {
    this.#watch.activity();
    if (this.#aside.value) this.#ask(undefined, [], 'brief');
  }

  startVoice(): Promise<void> {
    this.#understanding ??= import('./understanding.ts');
    return this.#link.start(() => this.#ask());
  }

  stopVoice(): void {
    this.#link.stop();
  }

  dispose(): void {
    document.removeEventListener('visibilitychange', this.#onVisibility);
    this.#unsubscribe?.();
    this.#watch.stop();
    this.#link.dispose();
    this.#session.dispose();
  }

  // What comes in.

  /** Takes one event, by whatever way it came; what the job does not take is answered, never swallowed. */
  async #take(heard: HeardEvent, spoken?: VoiceTrace): Promise<void> {
    const { context } = this.#session.snapshot.value;
    // An answer that was pointed at is that answer from here on.
    const pointed = { ...heard, type: pointedAt(heard.type, this.#answers()) ?? heard.type };
    if (pointed.type === 'answers.more') {
      this.#turnPage();
      return;
    }
    const trusted = this.#hearing.take(
      { event: pointed, ...(spoken ? { trace: spoken } : {}) },
      this.#promptBehind(),
    );
    if (trusted.kind === 'asks') {
      this.#ask();
      return;
    }
    const { event, trace } = trusted;
    const { type: meaning } = event;
    const aside = asideFor(
      meaning,
      this.#prompt(),
      context,
      event.slots,
      this.#aside.value,
      missCountOf(tallyOf(this.#session.counted().map(({ entry }) => entry))),
    );
    if (aside) {
      this.#ask(aside);
      return;
    }
    const set = this.#tablet.set(meaning);
    if (set) {
      this.#link.dress();
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
    await this.#count(event, trace);
  }

  /** Gives an event to the count of bales, and what is not of the counting to the job. */
  async #count(event: HeardEvent, trace?: VoiceTrace): Promise<void> {
    const { context } = this.#session.snapshot.value;
    const turn = this.#counter.take(event, this.#session.prompt(), context);
    switch (turn.kind) {
      case 'forTheJob':
        await this.#giveToJob(turn.event, trace);
        return;
      case 'counts': {
        const { kept } = await this.#session.noteCounted(turn.entry, trace);
        this.#counter.counted();
        this.#ask(undefined, kept ? [] : [SESSION_LINES.notKept]);
        return;
      }
      case 'asks':
        this.#ask();
        return;
      case 'tells':
        this.#ask({ kind: 'record', say: turn.say });
        return;
      case 'leaves':
        this.#ask(undefined, turn.say);
        return;
      case 'notTaken':
        this.#refuse(SESSION_LINES.notForNow);
        return;
    }
  }

  async #giveToJob(event: HeardEvent, trace?: VoiceTrace): Promise<void> {
    if (!this.#session.takes(event)) {
      this.#refuse(SESSION_LINES.notForNow);
      return;
    }
    const { kept } = await this.#session.send(event, trace);
    this.#ask(undefined, kept ? [] : [SESSION_LINES.notKept]);
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

  async #understand({ text, levelDbfs, snrDb, margin, hearing }: Utterance): Promise<void> {
    this.#watch.activity();
    const understand = (await this.#understanding)?.understand;
    if (!understand) return;
    const understanding = understand(text, this.#expecting(), margin);
    // Nobody was asked to speak, so nobody is told that it was not understood.
    if (this.#link.isResting && understanding.outcome !== 'understood') return;
    switch (understanding.outcome) {
      case 'understood': {
        const { meaning, slots, words } = understanding;
        const answer = pointedAt(meaning, this.#answers()) ?? meaning;
        const takenFor = worded(taughtForm(answer), this.#tablet.wording());
        this.#lastHeard.value = { words, outcome: 'taken', takenFor };
        const channel: Channel = {
          by: 'voice',
          margin,
          snrDb,
          hearing: worseOf(hearing, this.#hearing.grade.value),
        };
        void this.#take({ type: meaning, slots, channel }, { heardText: words, levelDbfs });
        return;
      }
      case 'ambiguous':
        this.#lastHeard.value = { words: understanding.words, outcome: 'ambiguous' };
        this.#refuse(SESSION_LINES.whichOfTwo);
        return;
      case 'refused':
        this.#lastHeard.value = { words: understanding.words, outcome: 'unclear' };
        if (understanding.sentence) this.#refuse(understanding.sentence, this.#prompt().span);
        else this.#refuse(SESSION_LINES.notUnderstood);
        return;
    }
  }

  /** @param span what a number has to be, where it was one that could not be taken */
  #refuse(line: string, span: Say = []): void {
    this.#refusal = [line, ...span];
    this.#link.refused();
  }

  #tabletNoticed(reason: Parameters<JobSession['voidLockout']>[0]): void {
    if (this.#session.prompt().safety === 'keepOut') return;
    this.#desk.end();
    this.#counter.end();
    this.#hearing.end();
    void this.#session.voidLockout(reason).then(() => this.#ask());
  }

  /** A tablet nobody sees knows nothing of what happens at the machine. */
  #pageHidOrShowed(): void {
    if (document.visibilityState === 'hidden') {
      this.#link.suspend();
      this.#tabletNoticed('void.slept');
    } else if (this.#link.hasMouth) {
      this.#link.resume();
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
    if (aside && this.#link.hasMouth && isOver(prompt)) this.#link.resume();
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

  /** Says at once what is different from now on, unless somebody is speaking: then it is said with what comes next. */
  #roomHeard(grade: HearingGrade): void {
    const hasNews = this.#hearing.hear(grade);
    const prompt = this.#prompt();
    if (hasNews && this.#link.isWaiting)
      this.#put(prompt, { ...prompt, notices: [], question: prompt.brief });
    else if (!this.#hearing.takesVoice) this.#link.rest(true);
  }

  #put(prompt: Prompt, asked: Prompt): void {
    this.#announced.value = this.#hearing.toSay();
    this.#asked = { ...asked, notices: [...this.#announced.value, ...asked.notices] };
    this.#askings += 1;
    this.#link.ask({
      id: `${prompt.state}#${this.#askings}`,
      // A warning is heard to its end.
      mayBeInterrupted: prompt.state !== 'job.safety.unknown.voided',
    });
    this.#link.rest(!this.#hearing.takesVoice);
  }

  /** The answers on the screen now. */
  #answers(): AnswersShown {
    return this.#answersNow.value;
  }

  #workOutAnswers(): AnswersShown {
    const prompt = this.#prompt();
    const { state, page } = this.#page.value;
    const choices = choicesFor(prompt, this.#session.snapshot.value.context, this.#tablet.wording());
    return answersShown(prompt, choices, state === prompt.state ? page : 0);
  }

  /** What is understood now: what the dialogue asks for, and what the screen adds to it. */
  #expecting(): Expecting {
    const { expecting, safety } = this.#prompt();
    const { reach } = this.#hearing.policy();
    const shown = this.#aside.value;
    const isCounting = this.#counter.tally.value !== undefined;
    const ofAnswers = shown || isCounting ? [] : saidOfAnswers(this.#answers());
    return {
      ...expecting,
      onScreen: [...saidOver(shown), ...ofAnswers],
      reach,
      nothingToVoid: safety === 'keepOut',
    };
  }

  /** What the hearing has to have said between two tries at the same question. */
  #toSayMeanwhile(): Say {
    const say = this.#hearing.toSay();
    if (say.length > 0) this.#announced.value = say;
    return say;
  }

  /** What is asked now: whether an answer that is held is right, or what is behind it. */
  #prompt(): Prompt {
    return this.#promptNow.value;
  }

  /** What is asked by the figure that has the floor, else by the job. */
  #promptBehind(): Prompt {
    const { context } = this.#session.snapshot.value;
    return this.#desk.promptOver(this.#counter.promptOver(this.#session.prompt(), context));
  }

  #spoken(): Spoken {
    return {
      expecting: () => this.#expecting(),
      wordsOf: (saying) =>
        sayWorded([...this.#toSayMeanwhile(), ...this.#wordsOf(saying)], this.#tablet.wording()),
      replies: () => this.#replies(),
      isOver: () => isOver(this.#asked),
      decide: (utterance) => void this.#understand(utterance),
      stopHeard: () =>
        void this.#take({ type: 'stop', slots: {}, channel: { by: 'voice', margin: 1, snrDb: 0 } }),
      dress: (speaker) => this.#tablet.dress(speaker),
      fieldModel: () => this.#tablet.fieldModel(),
    };
  }

  #wordsOf(saying: Saying): Say {
    const { notices, question, brief } = this.#asked;
    switch (saying.kind) {
      case 'prompt':
        return [...notices, ...question];
      case 'short again':
        return [...(saying.after === 'not understood' ? this.#refusal : [SESSION_LINES.noAnswer]), ...brief];
      case 'what can be said':
        return sayWhatCanBeSaid(this.#asked);
      case 'big buttons':
        return [SESSION_LINES.answerByButton];
    }
  }

  /** What would be said to each answer that is asked for. */
  #replies(): readonly Say[] {
    const job = this.#session.prompt();
    const { meanings } = this.#prompt().expecting;
    // While bales are counted the reply is two words and a number, which are always at hand.
    if (this.#counter.tally.value && !this.#desk.dialogue.value) return [];
    const isFigure = this.#desk.dialogue.value !== undefined;
    const replies = meanings
      .map((type) => ({ type, slots: {}, channel: { by: 'touch' } }) as const)
      .flatMap((event) => {
        if (isFigure) return this.#desk.preview(event, job) ?? [];
        return this.#session.takes(event) ? [this.#session.preview(event)] : [];
      });
    const wording = this.#tablet.wording();
    return replies.map(({ notices, question }) => sayWorded([...notices, ...question], wording));
  }

  #currentView(): ConversationView {
    const { context } = this.#session.snapshot.value;
    const wording = this.#tablet.wording();
    const prompt = this.#prompt();
    const aside = this.#aside.value;
    return {
      prompt: promptWorded({ ...prompt, notices: [...this.#announced.value, ...prompt.notices] }, wording),
      context,
      wording,
      turn: this.#link.turn.value,
      voice: this.#link.voice.value,
      hearing: this.#hearing.grade.value,
      answers: this.#answers(),
      record: this.#session.record.value,
      ...present('level', this.#link.level),
      ...present('speechTrouble', this.#link.speechTrouble),
      ...present('lastHeard', this.#lastHeard),
      ...(aside ? { aside: { ...aside, say: sayWorded(aside.say, wording) } } : {}),
      ...present('tally', this.#counter.tally),
    };
  }
}

function promptWorded(prompt: Prompt, wording: Wording): Prompt {
  return {
    ...prompt,
    notices: sayWorded(prompt.notices, wording),
    question: sayWorded(prompt.question, wording),
    brief: sayWorded(prompt.brief, wording),
    why: sayWorded(prompt.why, wording),
  };
}

function present<K extends string, V>(key: K, { value }: ReadonlySignal<V | undefined>): { [P in K]?: V } {
  return value === undefined ? {} : ({ [key]: value } as { [P in K]?: V });
}
