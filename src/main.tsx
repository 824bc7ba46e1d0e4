import { signal } from '@preact/signals';
import { render } from 'preact';
import type { Speaker } from '../audio/mouth/speaker.ts';
import { safetyOf } from '../flows/prompt.ts';
import { App, type Services } from './app.tsx';
import { offerFieldModel } from './offline/field-model.ts';
import { type Installed, install } from './offline/installed.ts';
import { bringVoice } from './offline/voice-at-hand.ts';
import { keepLearnt, learntFrom, lessonOf } from './records/learnt.ts';
import { figuresOf, machineOf } from './records/machine-at-hand.ts';
import { openRecords } from './records/records.ts';
import { hearingChecker } from './screens/hearing-check.ts';
import { keepPreferences, wearPreferences } from './screens/preferences.ts';
import { watchRoute } from './screens/route.ts';
import { hearingAsked } from './screens/spoken-hearing.ts';
import { settingAsked } from './screens/spoken-settings.ts';
import { dressMouth, ownVoiceNames } from './screens/voice-choice.ts';
import { converse, type Tablet } from './session/conversation.ts';
import { runDrill } from './session/drill-session.ts';
import { type JobSession, runJob } from './session/job-session.ts';

const place = document.getElementById('app');
if (!place) throw new Error('The page has no place for the app.');

const preferences = keepPreferences(localStorage);
wearPreferences(preferences, document.documentElement, matchMedia('(prefers-color-scheme: dark)'));

const dress = (speaker: Speaker) => dressMouth(speaker, preferences.value);
const fieldModel = () => preferences.value.fieldModel;
const tablet: Tablet = {
  dress,
  fieldModel,
  set(meaning) {
    const now = preferences.value;
    const asked = settingAsked(meaning, now, ownVoiceNames()) ?? hearingAsked(meaning, now);
    if (asked) preferences.value = asked.preferences;
    return asked?.say;
  },
  hearing: () => preferences.value.hearing,
  wording: () => preferences.value,
};

const learnt = keepLearnt(localStorage);

/** A job teaches once, when it is closed while it runs here. */
function learnAtClose({ snapshot }: JobSession): void {
  let wasOpen = !snapshot.value.matches({ inquiry: 'closed' });
  snapshot.subscribe((now) => {
    if (!wasOpen || !now.matches({ inquiry: 'closed' })) return;
    wasOpen = false;
    const lesson = lessonOf(now.context);
    if (lesson) learnt.value = learntFrom(learnt.value, lesson);
  });
}

const records = await openRecords();

const services: Services = {
  records,
  installed: import.meta.env.PROD ? install() : signal<Installed>({ kind: 'ready' }),
  voiceAtHand: bringVoice(document.baseURI, fieldModel),
  fieldModel: offerFieldModel(document.baseURI, {
    chosen: fieldModel,
    choose(field) {
      const { fieldModel: _, ...rest } = preferences.value;
      preferences.value = field === undefined ? rest : { ...rest, fieldModel: field };
    },
  }),
  ownVoices: ownVoiceNames(),
  learnt,
  makeChecker: () => hearingChecker(dress, fieldModel),
  async converse({ log, from }) {
    const session = runJob(log, from);
    // A job that goes on after a break knows nothing of what people did at the machine meanwhile.
    if (from && safetyOf(from) !== 'keepOut') await session.voidLockout('void.restarted');
    const { counts, isUsed } = learnt.value;
    if (!from && isUsed) await session.takeEstimates(counts);
    const machine = await machineOf(records, log.entries);
    if (!from && machine?.bands && machine.bands.length > 0) await session.knowMachine(machine.bands);
    learnAtClose(session);
    const conversation = converse(session, tablet, figuresOf(machine));
    // The tap that opened the job is also the tap that lets the page speak and hear.
    void conversation.startVoice();
    return conversation;
  },
  startDrill(options) {
    const session = runDrill(options);
    const conversation = converse(session, tablet);
    void conversation.startVoice();
    return { session, conversation };
  },
};
render(<App services={services} route={watchRoute()} preferences={preferences} />, place);
