import { describe, expect, it } from 'vitest';
import { createActor, SimulatedClock, type SnapshotFrom } from 'xstate';
import { getShortestPaths } from 'xstate/graph';
import type { Utterance } from '../../audio/ears/utterance.ts';
import { earconSamples } from '../../audio/mouth/earcons.ts';
import {
  FAILURES_TO_BUTTONS,
  type Prompt,
  type Saying,
  type TurnEffects,
  type TurnEvent,
  turnsMachine,
  turnTimesMs,
} from '../../audio/turns.ts';

const question: Prompt = { id: 'which side', mayBeInterrupted: true };
const warning: Prompt = { id: 'hands out', mayBeInterrupted: false };

const utterance: Utterance = {
  text: 'left_hand_side',
  words: [],
  startedAtMs: 0,
  endedAtMs: 900,
  decidedAtMs: 1_300,
  levelDbfs: -20,
  snrDb: 25,
  hearing: 'good',
  margin: 0.9,
};

const everyEvent: readonly TurnEvent[] = [
  { type: 'ask', prompt: question },
  { type: 'ask', prompt: warning },
  { type: 'mouth.finished' },
  { type: 'stop.heard' },
  { type: 'touch.hush' },
  { type: 'touch.answered' },
  { type: 'speech.started' },
  { type: 'speech.dropped' },
  { type: 'utterance', utterance },
  { type: 'refused' },
  { type: 'ears.failed' },
  { type: 'ears.recovered' },
  { type: 'voice.rests' },
  { type: 'voice.returns' },
  { type: 'suspend' },
  { type: 'resume' },
];

/** The room as the effects leave it: what the mouth does, what the ears may hear, and everything said. */
class Room implements TurnEffects {
  mouth: 'silent' | 'speaking' = 'silent';
  ears: 'shut' | 'stop words' | 'open' | 'resting' = 'shut';
  listensFor: Prompt | undefined;
  buttonsFor: Prompt | undefined;
  readonly said: { readonly prompt: Prompt; readonly saying: Saying }[] = [];
  decided = 0;
  /** The rules broken so far. */
  readonly broken: string[] = [];

  prepareEars(prompt: Prompt): void {
    this.listensFor = prompt;
  }
  shutEars(mayStopCutIn: boolean): void {
    this.ears = mayStopCutIn ? 'stop words' : 'shut';
  }
  tones = 0;
  giveFloor(): void {
    this.tones += 1;
    if (this.ears !== 'shut') this.broken.push('a tone sounds into the ears');
  }
  openEars(): void {
    this.ears = 'open';
    this.#check();
  }
  restEars(): void {
    this.ears = 'resting';
    this.#check();
  }
  speak(prompt: Prompt, saying: Saying): void {
    this.mouth = 'speaking';
    this.said.push({ prompt, saying });
    this.#check();
  }
  hush(): void {
    this.mouth = 'silent';
  }
  decide(): void {
    this.decided += 1;
  }
  showBigButtons(prompt: Prompt): void {
    this.buttonsFor = prompt;
  }
  #check(): void {
    if (this.mouth === 'speaking' && (this.ears === 'open' || this.ears === 'resting'))
      this.broken.push('listens while it speaks');
  }
}

type TurnsMachine = ReturnType<typeof turnsMachine>;

/** A running chart in a room whose clock the test turns. */
function start(change: (machine: TurnsMachine) => TurnsMachine = (machine) => machine) {
  const room = new Room();
  const clock = new SimulatedClock();
  const actor = createActor(change(turnsMachine(room)), { clock });
  actor.start();
  const send = (event: TurnEvent): void => {
    // In the world the mouth has fallen silent when it reports its end.
    if (event.type === 'mouth.finished') room.mouth = 'silent';
    actor.send(event);
  };
  const play = (events: readonly TurnEvent[]): void => {
    for (const event of events) {
      const delayed = /^xstate\.after\.(.+)\.turns/.exec(event.type)?.[1];
      if (delayed === undefined) send(event);
      else clock.increment(delayMs(delayed, actor.getSnapshot()));
    }
  };
  return { room, clock, actor, send, play, state: () => stateOf(actor.getSnapshot()) };
}

function delayMs(name: string, snapshot: SnapshotFrom<TurnsMachine>): number {
  if (name === 'noInput' && failuresOf(snapshot) >= FAILURES_TO_BUTTONS) return turnTimesMs.noInputAtButtons;
  const ms = turnTimesMs[name as keyof typeof turnTimesMs];
  if (ms === undefined) throw new Error(`The chart has a delay the test does not know: ${name}.`);
  return ms;
}

function failuresOf(snapshot: SnapshotFrom<TurnsMachine>): number {
  return snapshot.context.nothingHeard + snapshot.context.notUnderstood;
}

function stateOf(snapshot: SnapshotFrom<TurnsMachine>): string {
  return typeof snapshot.value === 'string' ? snapshot.value : (Object.keys(snapshot.value)[0] ?? '');
}

/** Every situation of the chart; from the fourth failure on they repeat, so counting stops there. */
const exploration = {
  // The library leaves the clock's events out once events are given.
  events: (snapshot: SnapshotFrom<TurnsMachine>) => [
    ...everyEvent,
    ...snapshot._nodes.flatMap((node) =>
      node.after.map(({ eventType }) => ({ type: eventType }) as TurnEvent),
    ),
  ],
  serializeState: (snapshot: SnapshotFrom<TurnsMachine>) => {
    const { prompt, saying, doEarsWork, doesVoiceRest } = snapshot.context;
    const failures = Math.min(failuresOf(snapshot), FAILURES_TO_BUTTONS + 2);
    return JSON.stringify([snapshot.value, prompt.id, saying, failures, doEarsWork, doesVoiceRest]);
  },
  stopWhen: (snapshot: SnapshotFrom<TurnsMachine>) => failuresOf(snapshot) > FAILURES_TO_BUTTONS + 1,
  limit: 20_000,
};

const paths = getShortestPaths(turnsMachine(new Room()), exploration);

/** The rules broken on any path, played by a real actor against a simulated clock. */
function rulesBroken(change?: (machine: TurnsMachine) => TurnsMachine): Set<string> {
  const broken = new Set<string>();
  for (const path of paths) {
    const run = start(change);
    run.play(path.steps.slice(1).map(({ event }) => event as TurnEvent));
    for (const rule of run.room.broken) broken.add(rule);
    const state = run.state();
    if (state === 'speaking' && run.room.mouth !== 'speaking') broken.add('silent in speaking');
    if (state !== 'speaking' && run.room.mouth === 'speaking') broken.add(`speaks in ${state}`);
    const mayHear = state === 'listening' || state === 'hearing';
    if (mayHear !== (run.room.ears === 'open')) broken.add(`ears ${run.room.ears} in ${state}`);
    if ((state === 'resting') !== (run.room.ears === 'resting'))
      broken.add(`ears ${run.room.ears} in ${state}`);
    if (run.room.ears === 'stop words' && state !== 'speaking') broken.add(`stop words in ${state}`);
    const { prompt } = run.actor.getSnapshot().context;
    if (run.room.ears === 'stop words' && !prompt.mayBeInterrupted) broken.add('a warning may be stopped');
    if (mayHear && run.room.listensFor !== prompt) broken.add('listens for another prompt');
  }
  return broken;
}

describe('the turns', () => {
  it('has the states the test believes it has', () => {
    const visited = new Set(paths.map((path) => stateOf(path.state)));
    expect([...visited].sort()).toEqual(
      [
        'deciding',
        'echoTail',
        'hearing',
        'idle',
        'listening',
        'resting',
        'speaking',
        'suspended',
        'touchOnly',
      ].sort(),
    );
    expect(paths.length).toBeGreaterThan(100);
  });

  it('never listens while it speaks, on any path to any state', () => {
    expect([...rulesBroken()]).toEqual([]);
  });

  // A check that cannot fail proves nothing: take each guard of the half-duplex away, and it must.
  it.each(['shutEars', 'shutEarsButForStop', 'hush', 'prepareEars', 'restEars'] as const)(
    'would be caught without %s',
    (action) => {
      const broken = rulesBroken((machine) => machine.provide({ actions: { [action]: () => {} } }));
      expect(broken.size).toBeGreaterThan(0);
    },
  );

  it('is never stuck: what waits has a clock or waits for a touch, and a new prompt is always taken', () => {
    for (const { state } of paths) {
      const name = stateOf(state);
      expect(state.can({ type: 'ask', prompt: question }), name).toBe(true);
      if (['idle', 'suspended', 'touchOnly', 'resting'].includes(name)) continue;
      const hasClock = state._nodes.some((node) => node.after.length > 0);
      expect(hasClock, `${name} waits for nothing`).toBe(true);
    }
  });

  it('reaches listening or big buttons from every state within three steps of its own, whatever the mouth forgets', () => {
    for (const path of paths) {
      const run = start();
      run.play(path.steps.slice(1).map(({ event }) => event as TurnEvent));
      if (run.state() === 'idle' || run.state() === 'suspended') continue;
      run.clock.increment(turnTimesMs.deciding);
      run.clock.increment(turnTimesMs.hearing);
      run.clock.increment(turnTimesMs.speaking + turnTimesMs.echoTail);
      // Listening, or in the middle of the next re-prompt after a listening that ran out.
      const wasHeard = ['listening', 'resting', 'touchOnly', 'speaking', 'echoTail'].includes(run.state());
      expect(wasHeard, `${run.state()} after ${path.steps.map(({ event }) => event.type).join(', ')}`).toBe(
        true,
      );
    }
  });

  it('opens the ears only when the echo has died away', () => {
    const run = start();
    run.play([{ type: 'ask', prompt: question }, { type: 'mouth.finished' }]);
    run.clock.increment(turnTimesMs.echoTail - 1);
    expect(run.room.ears).toBe('shut');
    run.clock.increment(1);
    expect(run.room.ears).toBe('open');
    const afterTheTone = turnTimesMs.echoTail - (1000 * earconSamples('listening', 16_000).length) / 16_000;
    expect(afterTheTone).toBeGreaterThanOrEqual(150);
    expect(afterTheTone).toBeLessThanOrEqual(300);
  });

  it('makes the ears ready while the mouth asks', () => {
    const run = start();
    run.send({ type: 'ask', prompt: question });
    expect(run.room).toMatchObject({ mouth: 'speaking', listensFor: question });
  });

  it('is stopped by voice and by touch in a question, by neither in a warning, and by a new prompt in both', () => {
    for (const cut of [{ type: 'stop.heard' }, { type: 'touch.hush' }, { type: 'touch.answered' }] as const) {
      const asked = start();
      asked.play([{ type: 'ask', prompt: question }, cut]);
      expect(asked.room.mouth).toBe('silent');
      const warned = start();
      warned.play([{ type: 'ask', prompt: warning }, cut]);
      expect(warned.room.mouth).toBe('speaking');
      expect(warned.room.ears).toBe('shut');
      warned.send({ type: 'ask', prompt: question });
      expect(warned.room.said.at(-1)).toEqual({ prompt: question, saying: { kind: 'prompt' } });
    }
  });

  it('meets each failure in a row with another sentence, then big buttons, and never says the same twice', () => {
    const run = start();
    run.send({ type: 'ask', prompt: question });
    for (let failure = 0; failure < 8; failure += 1) {
      run.send({ type: 'mouth.finished' });
      run.clock.increment(turnTimesMs.echoTail);
      if (failure % 2 === 0) run.clock.increment(turnTimesMs.noInputAtButtons);
      else run.play([{ type: 'speech.started' }, { type: 'utterance', utterance }, { type: 'refused' }]);
    }
    const kinds = run.room.said.map(({ saying }) => saying.kind);
    expect(kinds.slice(0, 4)).toEqual(['prompt', 'short again', 'what can be said', 'big buttons']);
    for (const [i, kind] of kinds.slice(1).entries()) expect(kind).not.toBe(kinds[i]);
    expect(run.room.buttonsFor).toBe(question);
  });

  it('counts silence and misunderstanding apart', () => {
    const run = start();
    run.play([{ type: 'ask', prompt: question }, { type: 'mouth.finished' }]);
    run.clock.increment(turnTimesMs.echoTail);
    run.clock.increment(turnTimesMs.noInput);
    run.send({ type: 'mouth.finished' });
    run.clock.increment(turnTimesMs.echoTail);
    run.play([{ type: 'speech.started' }, { type: 'utterance', utterance }, { type: 'refused' }]);
    expect(run.actor.getSnapshot().context).toMatchObject({ nothingHeard: 1, notUnderstood: 1 });
    run.send({ type: 'ask', prompt: warning });
    expect(run.actor.getSnapshot().context).toMatchObject({ nothingHeard: 0, notUnderstood: 0 });
  });

  it('keeps the voice listening when the big buttons are up, without nagging', () => {
    const run = start();
    run.send({ type: 'ask', prompt: question });
    for (let failure = 0; failure < FAILURES_TO_BUTTONS; failure += 1) {
      run.send({ type: 'mouth.finished' });
      run.clock.increment(turnTimesMs.echoTail);
      run.clock.increment(turnTimesMs.noInput);
    }
    run.send({ type: 'mouth.finished' });
    run.clock.increment(turnTimesMs.echoTail);
    expect(run.room).toMatchObject({ ears: 'open', buttonsFor: question });
    const saidBefore = run.room.said.length;
    run.clock.increment(turnTimesMs.noInputAtButtons - 1);
    expect(run.room.said.length).toBe(saidBefore);
  });

  it('does not count a knock as an answer', () => {
    const run = start();
    run.play([{ type: 'ask', prompt: question }, { type: 'mouth.finished' }]);
    run.clock.increment(turnTimesMs.echoTail);
    run.play([{ type: 'speech.started' }, { type: 'speech.dropped' }]);
    expect(run.state()).toBe('listening');
    expect(failuresOf(run.actor.getSnapshot())).toBe(0);
    // And is not answered: a tone would be the next knock.
    expect(run.room).toMatchObject({ tones: 1, ears: 'open' });
  });

  it('goes on by touch alone without ears, and asks again when they are back', () => {
    const run = start();
    run.play([{ type: 'ask', prompt: question }, { type: 'ears.failed' }, { type: 'mouth.finished' }]);
    run.clock.increment(turnTimesMs.echoTail);
    expect(run.state()).toBe('touchOnly');
    expect(run.room.tones).toBe(0);
    expect(run.room).toMatchObject({ ears: 'shut', buttonsFor: question });
    run.send({ type: 'ears.recovered' });
    expect(run.room.said.at(-1)).toEqual({ prompt: question, saying: { kind: 'prompt' } });
  });

  it('rests where it is too loud: no answers, no nagging, stop words still decided, and asks again when it is quieter', () => {
    const run = start();
    run.play([{ type: 'ask', prompt: question }, { type: 'mouth.finished' }]);
    run.clock.increment(turnTimesMs.echoTail);
    run.send({ type: 'voice.rests' });
    expect(run.room).toMatchObject({ ears: 'resting', buttonsFor: question });
    run.clock.increment(10 * turnTimesMs.noInputAtButtons);
    run.play([{ type: 'speech.started' }, { type: 'utterance', utterance }, { type: 'refused' }]);
    expect(run.state()).toBe('resting');
    expect(run.room).toMatchObject({ decided: 1, ears: 'resting' });
    expect(run.room.said).toHaveLength(1);
    // A touch goes on, and the next question is asked aloud; the ears rest again behind it.
    run.play([{ type: 'touch.answered' }, { type: 'ask', prompt: warning }, { type: 'mouth.finished' }]);
    run.clock.increment(turnTimesMs.echoTail);
    expect(run.state()).toBe('resting');
    run.send({ type: 'voice.returns' });
    expect(run.room.said.at(-1)).toEqual({ prompt: warning, saying: { kind: 'prompt' } });
    run.send({ type: 'mouth.finished' });
    run.clock.increment(turnTimesMs.echoTail);
    expect(run.state()).toBe('listening');
  });

  it('drops what somebody is saying when it grows too loud to trust it', () => {
    const run = start();
    run.play([{ type: 'ask', prompt: question }, { type: 'mouth.finished' }]);
    run.clock.increment(turnTimesMs.echoTail);
    run.play([{ type: 'speech.started' }, { type: 'voice.rests' }]);
    expect(run.state()).toBe('resting');
  });

  it('falls silent and deaf while the tablet sleeps, and asks what was asked meanwhile when it wakes', () => {
    const run = start();
    run.play([{ type: 'ask', prompt: question }, { type: 'suspend' }, { type: 'ask', prompt: warning }]);
    expect(run.room).toMatchObject({ mouth: 'silent', ears: 'shut' });
    run.send({ type: 'resume' });
    expect(run.room.said.at(-1)).toEqual({ prompt: warning, saying: { kind: 'prompt' } });
  });

  it('decides each utterance once, with the ears shut', () => {
    const run = start();
    run.play([{ type: 'ask', prompt: question }, { type: 'mouth.finished' }]);
    run.clock.increment(turnTimesMs.echoTail);
    run.play([
      { type: 'speech.started' },
      { type: 'utterance', utterance },
      { type: 'utterance', utterance },
    ]);
    expect(run.room).toMatchObject({ decided: 1, ears: 'shut' });
  });
});
