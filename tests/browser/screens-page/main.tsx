import { signal } from '@preact/signals';
import { render } from 'preact';
import { App } from '../../../src/app.tsx';
import { offerFieldModel } from '../../../src/offline/field-model.ts';
import type { Installed } from '../../../src/offline/installed.ts';
import type { VoiceAtHand } from '../../../src/offline/voice-at-hand.ts';
import { forgotten } from '../../../src/records/learnt.ts';
import { openRecords } from '../../../src/records/records.ts';
import type { HearingCheck, HearingChecker } from '../../../src/screens/hearing-check.ts';
import { keepPreferences, wearPreferences } from '../../../src/screens/preferences.ts';
import { watchRoute } from '../../../src/screens/route.ts';
import { type DrillOptions, runDrill } from '../../../src/session/drill-session.ts';
import { type ActedConversation, actConversation, actSession } from './acted-conversation.ts';

/** What the browser tests reach through `window.screensPage`. */
export interface ScreensPage {
  /** The conversation of the job that is open. */
  conversation(): ActedConversation;
  /** Shows a moment of the hearing check. */
  actCheck(state: HearingCheck): void;
}

declare global {
  interface Window {
    screensPage?: ScreensPage;
  }
}

const root = document.getElementById('app');
if (!root) throw new Error('The page has no place for the app.');

const checkerState = signal<HearingCheck>({ kind: 'idle' });
const actedChecker: HearingChecker = { state: checkerState, start: async () => {}, stop() {} };

let latest: ActedConversation | undefined;
const preferences = keepPreferences(localStorage);
wearPreferences(preferences, document.documentElement, matchMedia('(prefers-color-scheme: dark)'));

const services = {
  records: await openRecords(),
  installed: signal<Installed>({ kind: 'ready' }),
  voiceAtHand: signal<VoiceAtHand>({ kind: 'here' }),
  ownVoices: [],
  fieldModel: offerFieldModel(document.baseURI, { chosen: () => undefined, choose() {} }),
  learnt: signal(forgotten()),
  makeChecker: () => actedChecker,
  converse: async (job: Parameters<typeof actConversation>[0]) => {
    latest = actConversation(job);
    return latest;
  },
  startDrill: (options: DrillOptions) => {
    const session = runDrill(options);
    latest = actSession(session);
    return { session, conversation: latest };
  },
};
render(<App services={services} route={watchRoute()} preferences={preferences} />, root);

window.screensPage = {
  actCheck(state) {
    checkerState.value = state;
  },
  conversation() {
    if (!latest) throw new Error('No job is open.');
    return latest;
  },
};
