import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import type { Prompt } from '../../flows/prompt.ts';
import { answerPicture } from '../pictures/answer-picture.tsx';
import type { Choice } from '../session/view.ts';
import { answerPage } from './answer-pages.ts';
import './answer-tags.css';
import { asSentence } from './sentence.ts';

interface AnswerTagsProps {
  readonly prompt: Prompt;
  readonly choices: readonly Choice[];
  /** Set when the job is over: the one thing left is its card. */
  readonly onFinish: (() => void) | undefined;
  onAnswer(choice: Choice): void;
  onNumber(): void;
}

type Tag =
  | { readonly kind: 'choice'; readonly choice: Choice }
  | { readonly kind: 'number' }
  | { readonly kind: 'finish'; readonly finish: () => void };

/** The answers to the question as tags, at most four at once, likeliest first. A number to give is a tag of its own. */
export function AnswerTags({ prompt, choices, onFinish, onAnswer, onNumber }: AnswerTagsProps): JSX.Element {
  const step = useSignal({ state: prompt.state, page: 0 });
  const page = step.value.state === prompt.state ? step.value.page : 0;
  const tags: readonly Tag[] = [
    ...(prompt.expecting.value ? [{ kind: 'number' } as const] : []),
    ...choices.map((choice) => ({ kind: 'choice', choice }) as const),
    ...(onFinish ? [{ kind: 'finish', finish: onFinish } as const] : []),
  ];
  const { shown, pages } = answerPage(tags, page);
  const button = (tag: Tag): JSX.Element => {
    switch (tag.kind) {
      case 'number':
        return <TagButton key={`${prompt.state}/number`} label="Tap in the number" onPress={onNumber} />;
      case 'finish':
        return <TagButton key={`${prompt.state}/finish`} label="See the job card" onPress={tag.finish} />;
      case 'choice':
        return (
          <TagButton
            key={`${prompt.state}/${tag.choice.meaning}`}
            label={asSentence(tag.choice.label)}
            picture={answerPicture(tag.choice.meaning)}
            onPress={() => onAnswer(tag.choice)}
          />
        );
    }
  };
  return (
    <section class="answer-tags" aria-label="Answers" data-count={pages > 1 ? 4 : shown.length}>
      {shown.map(button)}
      {pages > 1 ? (
        <TagButton
          key={`${prompt.state}/more`}
          label="More answers"
          isMore
          detail={`${page + 1} of ${pages}`}
          onPress={() => {
            step.value = { state: prompt.state, page: (page + 1) % pages };
          }}
        />
      ) : null}
    </section>
  );
}

interface TagButtonProps {
  readonly label: string;
  readonly detail?: string;
  readonly picture?: JSX.Element | undefined;
  readonly isMore?: boolean;
  onPress(): void;
}

function TagButton({ label, detail, picture, isMore = false, onPress }: TagButtonProps): JSX.Element {
  return (
    <button
      type="button"
      class="tag"
      data-more={isMore}
      data-pictured={picture !== undefined}
      onClick={onPress}
    >
      {picture ? <span class="tag-picture">{picture}</span> : null}
      <span class="tag-label">
        {label}
        {detail ? <span class="tag-detail"> ({detail})</span> : null}
      </span>
    </button>
  );
}
