import type { JSX } from 'preact';
import type { Prompt } from '../../flows/prompt.ts';
import { answerPicture } from '../pictures/answer-picture.tsx';
import type { AnswersShown, Choice } from '../session/view.ts';
import './answer-tags.css';
import { asSentence } from './sentence.ts';

interface AnswerTagsProps {
  readonly prompt: Prompt;
  readonly answers: AnswersShown;
  /** Set when the job is over: the one thing left is its card. */
  readonly onFinish: (() => void) | undefined;
  readonly finishLabel: string;
  onAnswer(choice: Choice): void;
  onNumber(): void;
  onMore(): void;
}

/**
 * The answers to the question as tags, at most four at once, likeliest first, with the numbers they can be pointed at
 * by. A number to give is a tag of its own.
 */
export function AnswerTags(props: AnswerTagsProps): JSX.Element {
  const { prompt, answers, onFinish, finishLabel, onAnswer, onNumber, onMore } = props;
  const { shown, page, pages } = answers;
  return (
    <section
      class="answer-tags"
      aria-label="Answers"
      data-count={pages > 1 ? 4 : shown.length + (onFinish ? 1 : 0) || 1}
    >
      {shown.map((answer) =>
        answer === 'number' ? (
          <TagButton
            key={`${prompt.state}/number`}
            label={prompt.expecting.value?.kind === 'day' ? 'Tap in the day' : 'Tap in the number'}
            onPress={onNumber}
          />
        ) : (
          <TagButton
            key={`${prompt.state}/${answer.meaning}`}
            label={asSentence(answer.label)}
            number={answer.number}
            picture={answerPicture(answer.meaning)}
            onPress={() => onAnswer(answer)}
          />
        ),
      )}
      {onFinish ? <TagButton key={`${prompt.state}/finish`} label={finishLabel} onPress={onFinish} /> : null}
      {pages > 1 ? (
        <TagButton
          key={`${prompt.state}/more`}
          label="More answers"
          isMore
          detail={`${page + 1} of ${pages}`}
          onPress={onMore}
        />
      ) : null}
    </section>
  );
}

interface TagButtonProps {
  readonly label: string;
  readonly detail?: string;
  readonly number?: number | undefined;
  readonly picture?: JSX.Element | undefined;
  readonly isMore?: boolean;
  onPress(): void;
}

function TagButton({ label, detail, number, picture, isMore = false, onPress }: TagButtonProps): JSX.Element {
  return (
    <button
      type="button"
      class="tag"
      data-more={isMore}
      data-pictured={picture !== undefined}
      data-numbered={number !== undefined}
      onClick={onPress}
    >
      {number === undefined ? null : <span class="tag-number">{number}</span>}
      {picture ? <span class="tag-picture">{picture}</span> : null}
      <span class="tag-label">
        {label}
        {detail ? <span class="tag-detail"> ({detail})</span> : null}
      </span>
    </button>
  );
}
