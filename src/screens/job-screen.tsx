import { useComputed, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import type { JobContext } from '../../flows/job-context.ts';
import { isOver, type Prompt } from '../../flows/prompt.ts';
import type { MeaningId } from '../../grammar/lexicon.ts';
import { sayText } from '../../grammar/say.ts';
import type { Slots } from '../../grammar/understand.ts';
import { PartPicture } from '../pictures/part-picture.tsx';
import type { Conversation } from '../session/view.ts';
import { AnswerTags } from './answer-tags.tsx';
import { AsideSheet } from './aside-sheet.tsx';
import { CountPanel } from './count-panel.tsx';
import { FixedBar } from './fixed-bar.tsx';
import { HeardLine } from './heard-line.tsx';
import type { Preferences } from './preferences.ts';
import { stayAwake } from './wake-lock.ts';
import './job-screen.css';
import { LockoutList } from './lockout-list.tsx';
import { type ListedStep, lockoutProgress, stepCount } from './lockout-progress.ts';
import { NumberSheet } from './number-sheet.tsx';
import type { KeepPhoto } from './photo-taker.tsx';
import { ProofCounter } from './proof-counter.tsx';
import { QuestionPane } from './question-pane.tsx';
import { ReadBack } from './read-back.tsx';
import { SafetyPlate } from './safety-plate.tsx';
import { Sheet } from './sheet.tsx';
import { Strand } from './strand.tsx';
import { WordsSheet } from './words-sheet.tsx';

interface JobScreenProps {
  readonly conversation: Conversation;
  /** Units a number is first tapped in. */
  readonly units: Preferences['units'];
  /** Attaches a photo to this job; missing where nothing can be kept. */
  readonly keepPhoto: KeepPhoto | undefined;
  /** Called when the person leaves a job that is still open; it is kept. */
  onLeave(): void;
  /** Called when the job is over and its card is wanted. */
  onFinish(): void;
  readonly finishLabel?: string;
  /** Set where the card can be had before the talk is over. */
  readonly mayFinish?: boolean;
  /** In place of the part to look at, where a drill shows what is found there. */
  readonly picture?: JSX.Element | undefined;
}

/** A running job: the safety plate, the strand, one question, its answers, and the words that always work. */
export function JobScreen(props: JobScreenProps): JSX.Element {
  const { conversation, units, keepPhoto, onLeave, onFinish } = props;
  const open = useSignal<'question' | 'words' | 'number'>('question');
  const prompt = useComputed(() => conversation.view.value.prompt);
  const steps = useComputed(() => lockoutProgress(prompt.value));
  const view = conversation.view.value;
  useEffect(() => stayAwake(), []);
  const press = (meaning: MeaningId, slots?: Slots) => {
    open.value = 'question';
    conversation.press(meaning, slots);
  };
  const backToQuestion = () => {
    open.value = 'question';
  };
  const sheet = () => {
    const { value } = prompt.value.expecting;
    if (open.value === 'words')
      return (
        <WordsSheet
          onPress={press}
          keepPhoto={keepPhoto}
          side={view.context.side}
          onLeave={onLeave}
          onClose={backToQuestion}
        />
      );
    if (open.value === 'number' && value) {
      return (
        <NumberSheet
          value={value}
          units={units}
          question={sayText(prompt.value.brief)}
          onMeasurement={(measurement) => press('value.measured', { measurement })}
          onMissCount={(missCount) => press('value.missRate', { missCount })}
          onCount={(count) => press('value.count', { count })}
          onDay={(day) => press('value.day', { day })}
          onClose={backToQuestion}
        />
      );
    }
    if (view.aside) {
      return (
        <AsideSheet
          aside={view.aside}
          look={prompt.value.look}
          steps={steps.value}
          onPress={press}
          onClose={() => conversation.closeAside()}
        />
      );
    }
    if (view.tally && prompt.value.state === 'count.bales') {
      return (
        <Sheet title="Counting bales" closeLabel="Enough counting" onClose={() => press('count.enough')}>
          <CountPanel
            wording={view.wording}
            tally={view.tally}
            notices={prompt.value.notices}
            onPress={press}
            onNumber={() => {
              open.value = 'number';
            }}
          />
        </Sheet>
      );
    }
    return undefined;
  };
  return (
    <div class="job-frame">
      <main class="job">
        <SafetyPlate state={prompt.value.safety} step={stepCount(steps.value)} />
        <Strand
          knots={view.context.answers.length}
          turn={view.turn}
          voice={view.voice}
          level={view.level}
          hearing={view.hearing}
          onVoiceOn={() => void conversation.startVoice()}
          onVoiceOff={() => conversation.stopVoice()}
        />
        {sheet() ?? (
          <>
            <div class="job-middle">
              <HeardLine
                heard={view.lastHeard}
                notices={prompt.value.notices}
                record={view.record}
                voice={view.voice}
                speechTrouble={view.speechTrouble}
              />
              <QuestionPane prompt={prompt.value} />
            </div>
            <SidePane
              prompt={prompt.value}
              steps={steps.value}
              context={view.context}
              picture={props.picture}
            />
            <AnswerTags
              prompt={prompt.value}
              answers={view.answers}
              onFinish={(props.mayFinish ?? isOver(prompt.value)) ? onFinish : undefined}
              finishLabel={props.finishLabel ?? 'See the job card'}
              onAnswer={({ meaning }) => press(meaning)}
              onNumber={() => {
                open.value = 'number';
              }}
              onMore={() => press('answers.more')}
            />
          </>
        )}
        <FixedBar
          isMoreOpen={open.value === 'words'}
          onPress={press}
          onMore={() => {
            open.value = open.value === 'words' ? 'question' : 'words';
          }}
        />
      </main>
    </div>
  );
}

interface SidePaneProps {
  readonly prompt: Prompt;
  readonly steps: readonly ListedStep[] | undefined;
  readonly context: JobContext;
  readonly picture: JSX.Element | undefined;
}

/** What stands beside the question: the steps of the lockout, a number to accept, the count of a proof, or the part to look at. */
function SidePane({ prompt, steps, context, picture }: SidePaneProps): JSX.Element {
  return (
    <aside class="job-side">
      {steps ? (
        <LockoutList steps={steps} />
      ) : context.pending && prompt.state.includes('accepting') ? (
        <ReadBack pending={context.pending} />
      ) : context.proof && prompt.state.startsWith('job.inquiry.proving') ? (
        <ProofCounter proof={context.proof} />
      ) : (
        (picture ?? <PartPicture part={prompt.look} />)
      )}
    </aside>
  );
}
