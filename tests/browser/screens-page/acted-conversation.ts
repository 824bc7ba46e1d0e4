import { effect, type Signal, signal } from '@preact/signals';
import { asideFor } from '../../../flows/asides.ts';
import { USUAL_WORDING } from '../../../flows/wording.ts';
import { type MeaningId, taughtForm } from '../../../grammar/lexicon.ts';
import type { JobToTalkAbout } from '../../../src/app.tsx';
import { answersShown, pointedAt } from '../../../src/session/answers-shown.ts';
import { type JobSession, runJob } from '../../../src/session/job-session.ts';
import type { Conversation, ConversationView } from '../../../src/session/view.ts';

/** A conversation of the real charts by buttons alone, whose voice is acted: a test sets what it would show. */
export interface ActedConversation extends Conversation {
  readonly view: Signal<ConversationView>;
  act(change: Partial<ConversationView>): void;
}

export function actConversation({ log, from }: JobToTalkAbout): ActedConversation {
  const session = runJob(log, from);
  if (from) void session.voidLockout('void.restarted');
  return actSession(session);
}

export function actSession(session: JobSession): ActedConversation {
  let page = { state: '', at: 0 };
  const shown = (): Pick<ConversationView, 'prompt' | 'context' | 'answers'> => {
    const snapshot = session.snapshot.value;
    const prompt = session.prompt();
    const choices = prompt.expecting.meanings.map((meaning) => ({ meaning, label: taughtForm(meaning) }));
    const answers = answersShown(prompt, choices, page.state === prompt.state ? page.at : 0);
    return { prompt, context: snapshot.context, answers };
  };
  const view = signal<ConversationView>({
    ...shown(),
    wording: USUAL_WORDING,
    hearing: 'good',
    turn: 'quiet',
    voice: { kind: 'off' },
    record: session.record.value,
  });
  const act = (change: Partial<ConversationView>) => {
    view.value = { ...view.value, ...change };
  };
  const stopFollowing = effect(() => {
    const record = session.record.value;
    void session.happenings?.value;
    view.value = { ...view.peek(), ...shown(), record };
  });
  return {
    view,
    act,
    press(pressed: MeaningId, slots = {}) {
      const { aside: before, ...rest } = view.value;
      const meaning = pointedAt(pressed, rest.answers) ?? pressed;
      view.value = rest;
      if (meaning === 'answers.more') {
        page = { state: rest.prompt.state, at: rest.answers.page + 1 };
        return act(shown());
      }
      const aside = asideFor(meaning, rest.prompt, rest.context, slots, before);
      if (aside) return act({ aside });
      const event = { type: meaning, slots, channel: { by: 'touch' } } as const;
      if (!session.takes(event)) return act({ lastHeard: { words: '', outcome: 'notForNow' } });
      act({ lastHeard: { words: '', outcome: 'taken', takenFor: taughtForm(meaning) } });
      void session.send(event);
    },
    closeAside() {
      const { aside: _, ...rest } = view.value;
      view.value = rest;
    },
    startVoice: async () => act({ voice: { kind: 'on', isWarm: true }, turn: 'listening' }),
    stopVoice: () => act({ voice: { kind: 'off' }, turn: 'quiet' }),
    dispose() {
      stopFollowing();
      session.dispose();
    },
  };
}
