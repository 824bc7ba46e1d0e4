import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import type { Debrief } from '../../flows/drill/debrief.ts';
import { type DrillSetup, LARGEST_SEED } from '../../flows/drill/hidden-fault.ts';
import { DRILL_LEVELS, type DrillLevel, LEVELS } from '../../flows/drill/levels.ts';
import { isSeed } from '../../flows/drill/set-up.ts';
import { answerPicture } from '../pictures/answer-picture.tsx';
import type { DrillOptions, DrillSession, DrillStage } from '../session/drill-session.ts';
import type { Conversation } from '../session/view.ts';
import { ChoiceGroup } from './choice-group.tsx';
import { DebriefPage } from './debrief-page.tsx';
import { InitialsField } from './initials-field.tsx';
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
  startDrill(options: DrillOptions): DrillTalk;
}

type Moment =
  | { readonly at: 'entry' }
  | { readonly at: 'drill'; readonly talk: DrillTalk }
  | { readonly at: 'debrief'; readonly debrief: Debrief };

/** A drill from the trainer's set-up to the debrief. Nothing of it goes into the records. */
export function DrillScreen({ units, startDrill }: DrillScreenProps): JSX.Element {
  const moment = useSignal<Moment>({ at: 'entry' });
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
          onBegin={(setup, trainee) => {
            moment.value = { at: 'drill', talk: startDrill({ setup, trainee }) };
          }}
        />
      );
    case 'drill':
      return (
        <RunningDrill
          talk={now.talk}
          units={units}
          onFinish={(debrief) => {
            now.talk.conversation.dispose();
            moment.value = { at: 'debrief', debrief };
          }}
        />
      );
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

const LEVEL_CHOICES = DRILL_LEVELS.map((level) => ({
  value: level,
  label: `${level}: ${LEVELS[level].title}`,
}));

interface DrillEntryProps {
  /** @param setup missing where the drill is set up by voice */
  onBegin(setup: DrillSetup | undefined, trainee: string): void;
}

/** What the trainer sets: the level, the number that makes the drill, and who is trained; or all of it by voice. */
function DrillEntry({ onBegin }: DrillEntryProps): JSX.Element {
  const seedText = useSignal(String(Math.floor(Math.random() * (LARGEST_SEED + 1))));
  const level = useSignal<DrillLevel>(1);
  const trainee = useSignal('');
  const seed = seedOf(seedText.value);
  const { surroundings } = LEVELS[level.value];
  return (
    <Page title="Drill">
      <p class="drill-warning">
        A drill has an invented fault. Keep away from any real machine while it runs: what is confirmed in a
        drill is confirmed nowhere else.
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
          options={LEVEL_CHOICES}
          chosen={level.value}
          onChoose={(value) => {
            level.value = value;
          }}
        />
        {surroundings === '' ? null : <p>{surroundings}</p>}
        <label>
          Number of the drill, 0 to {LARGEST_SEED}. Give a second trainee the same number and level, and the
          same fault is hidden.
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
        <InitialsField label="Initials of the trainee, if you like" initials={trainee} />
        <p>
          The app plays the machine: it tells or shows what is found. Say what you find, and each step of the
          lockout only when it is true. When something happens that takes the lockout away, say so at once.
          When somebody presses for a short cut, refuse. Leaving the page ends the drill, and nothing of it is
          kept.
        </p>
        <button type="submit" class="page-go">
          Begin the drill
        </button>
        <button type="button" onClick={() => onBegin(undefined, trainee.value.trim())}>
          Set it up by voice
        </button>
      </form>
    </Page>
  );
}

/** The number that was typed, or undefined where it makes no drill. */
export function seedOf(text: string): number | undefined {
  const trimmed = text.trim();
  const number = Number(trimmed);
  return /^\d+$/.test(trimmed) && isSeed(number) ? number : undefined;
}

interface RunningDrillProps {
  readonly talk: DrillTalk;
  readonly units: Preferences['units'];
  onFinish(debrief: Debrief): void;
}

/** The job's own screen under a banner that no one can take for a real job. */
function RunningDrill({ talk, units, onFinish }: RunningDrillProps): JSX.Element {
  const { session, conversation } = talk;
  const stage = session.stage.value;
  // Read for its own sake: a happening or an answer may change what is seen.
  const seen = conversation.view.value && session.seen();
  useEffect(() => {
    if (stage.at === 'heard') onFinish(stage.debrief);
  }, [stage.at]);
  const finish = () => {
    const debrief = session.debrief();
    if (debrief) onFinish(debrief);
  };
  const picture =
    seen && 'meaning' in seen ? (
      <figure class="drill-picture" role="img" aria-label="What the machine of the drill shows">
        {answerPicture(seen.meaning)}
      </figure>
    ) : (
      besideTheJob(stage)
    );
  return (
    <div class="drill-frame">
      <header class="drill-banner">
        {drillName(stage)}. <b>Keep away from any real machine.</b>
      </header>
      <JobScreen
        conversation={conversation}
        units={units}
        keepPhoto={undefined}
        onLeave={() => goTo({ page: 'start' })}
        onFinish={finish}
        finishLabel="See the debrief"
        mayFinish={stage.at !== 'setUp' && session.debrief() !== undefined}
        picture={picture}
      />
    </div>
  );
}

/** What stands beside the question where that is not the job's; undefined where the part to look at does. */
function besideTheJob(stage: DrillStage): JSX.Element | undefined {
  switch (stage.at) {
    case 'setUp':
      return (
        <ol class="drill-beside">
          {DRILL_LEVELS.map((level) => (
            <li key={level}>
              <b>{level}</b> {LEVELS[level].title}
            </li>
          ))}
        </ol>
      );
    case 'drill':
      return stage.drill.pressed ? (
        <p class="drill-beside">The job waits until you have answered.</p>
      ) : undefined;
    case 'debrief':
      return (
        <p class="drill-beside">
          Point <b>{stage.point + 1}</b> of {stage.points.length}
        </p>
      );
    case 'heard':
      return undefined;
  }
}

/** What the drill is called: enough to give it again. */
function drillName(stage: DrillStage): string {
  if (stage.at === 'setUp') return 'A drill';
  const { seed, level } = stage.at === 'drill' ? stage.drill.machine.setup : stage.debrief;
  return `Drill ${seed}, level ${level}`;
}
