import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { type Debrief, DRILL_NOTICE, debriefOf } from '../../flows/drill/debrief.ts';
import { type DrillLevel, type DrillSetup, LARGEST_SEED } from '../../flows/drill/hidden-fault.ts';
import { answerPicture } from '../pictures/answer-picture.tsx';
import type { DrillSession } from '../session/drill-session.ts';
import type { Conversation } from '../session/view.ts';
import { ChoiceGroup } from './choice-group.tsx';
import { DebriefPage } from './debrief-page.tsx';
import './drill-screen.css';
import { JobScreen } from './job-screen.tsx';
import { Page } from './page.tsx';
import type { Preferences } from './preferences.ts';
import { goTo } from './route.ts';

/** A drill that can be talked to. */
export interface DrillTalk {
  readonly session: DrillSession;
  readonly conversation: Conversation;
}

interface DrillScreenProps {
  readonly units: Preferences['units'];
  startDrill(setup: DrillSetup): DrillTalk;
}

type Moment =
  | { readonly at: 'entry' }
  | { readonly at: 'drill'; readonly talk: DrillTalk }
  | { readonly at: 'debrief'; readonly debrief: Debrief };

/** A drill from the trainer's set-up to the debrief. Nothing of it goes into the records. */
export function DrillScreen({ units, startDrill }: DrillScreenProps): JSX.Element {
  const moment = useSignal<Moment>({ at: 'entry' });
  const trainee = useSignal('');
  const now = moment.value;
  useEffect(
    () => () => {
      if (moment.value.at === 'drill') moment.value.talk.conversation.dispose();
    },
    [],
  );
  switch (now.at) {
    case 'entry':
      return (
        <DrillEntry
          onBegin={(setup, initials) => {
            trainee.value = initials;
            moment.value = { at: 'drill', talk: startDrill(setup) };
          }}
        />
      );
    case 'drill': {
      const { session, conversation } = now.talk;
      return (
        <RunningDrill
          talk={now.talk}
          units={units}
          onFinish={() => {
            conversation.dispose();
            const debrief = debriefOf(session.drill.value, session.snapshot.value.context, {
              trainee: trainee.value,
              comment: '',
            });
            moment.value = { at: 'debrief', debrief };
          }}
        />
      );
    }
    case 'debrief':
      return (
        <DebriefPage
          debrief={now.debrief}
          onAgain={() => {
            moment.value = { at: 'entry' };
          }}
        />
      );
  }
}

const LEVELS: readonly { readonly value: DrillLevel; readonly label: string }[] = [
  { value: 1, label: '1: told in words, repaired without hands in' },
  { value: 2, label: '2: any fault, seen and measured' },
];

const MOST_INITIALS = 4;

interface DrillEntryProps {
  onBegin(setup: DrillSetup, trainee: string): void;
}

/** What the trainer sets: the number that makes the drill, its level, and who is trained. */
function DrillEntry({ onBegin }: DrillEntryProps): JSX.Element {
  const seedText = useSignal(String(Math.floor(Math.random() * (LARGEST_SEED + 1))));
  const level = useSignal<DrillLevel>(1);
  const trainee = useSignal('');
  const seed = seedOf(seedText.value);
  return (
    <Page title="Drill">
      <p class="drill-warning">
        {DRILL_NOTICE} Keep away from any real machine while it runs: what is confirmed in a drill is
        confirmed nowhere else.
      </p>
      <form
        class="page-form"
        onSubmit={(event) => {
          event.preventDefault();
          if (seed !== undefined) onBegin({ seed, level: level.value }, trainee.value.trim());
        }}
      >
        <ChoiceGroup
          legend="Level"
          options={LEVELS}
          chosen={level.value}
          onChoose={(value) => {
            level.value = value;
          }}
        />
        <label>
          Number of the drill, 0 to {LARGEST_SEED}. The same number and level make the same drill.
          <input
            type="text"
            inputMode="numeric"
            autocomplete="off"
            value={seedText.value}
            onInput={(event) => {
              seedText.value = event.currentTarget.value;
            }}
          />
        </label>
        {seed === undefined ? (
          <p class="trouble" role="alert">
            That is no number from 0 to {LARGEST_SEED}. Any of those makes a drill.
          </p>
        ) : null}
        <label>
          Initials of the trainee, if you like
          <input
            type="text"
            autocomplete="off"
            maxLength={MOST_INITIALS}
            value={trainee.value}
            onInput={(event) => {
              trainee.value = event.currentTarget.value;
            }}
          />
        </label>
        <p>
          The app plays the machine: it tells or shows what is found. Say what you find, and each step of the
          lockout only when it is true. When something happens that takes the lockout away, say so at once.
          Leaving the page ends the drill.
        </p>
        <button type="submit" class="page-go">
          Begin the drill
        </button>
      </form>
    </Page>
  );
}

/** The number that was typed, or undefined where it makes no drill. */
export function seedOf(text: string): number | undefined {
  const trimmed = text.trim();
  if (!/^\d{1,4}$/.test(trimmed)) return undefined;
  return Number(trimmed);
}

interface RunningDrillProps {
  readonly talk: DrillTalk;
  readonly units: Preferences['units'];
  onFinish(): void;
}

/** The job's own screen under a banner that no one can take for a real job. */
function RunningDrill({ talk, units, onFinish }: RunningDrillProps): JSX.Element {
  const { session, conversation } = talk;
  // Read for its own sake: a happening or an answer may change what is seen.
  const { setup } = session.drill.value;
  const seen = conversation.view.value && session.seen();
  const picture =
    seen && 'meaning' in seen ? (
      <figure class="drill-picture" role="img" aria-label="What the machine of the drill shows">
        {answerPicture(seen.meaning)}
      </figure>
    ) : undefined;
  return (
    <div class="drill-frame">
      <header class="drill-banner">
        Drill {setup.seed}. <b>Keep away from any real machine.</b>
      </header>
      <JobScreen
        conversation={conversation}
        units={units}
        keepPhoto={undefined}
        onLeave={() => goTo({ page: 'start' })}
        onFinish={onFinish}
        finishLabel="See the debrief"
        picture={picture}
      />
    </div>
  );
}
