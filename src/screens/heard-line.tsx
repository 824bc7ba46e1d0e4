import type { JSX } from 'preact';
import { type Say, sayText } from '../../grammar/say.ts';
import type { LastHeard, RecordState, VoiceState } from '../session/view.ts';

interface HeardLineProps {
  readonly heard: LastHeard | undefined;
  /** What came of it, as it is spoken. */
  readonly notices: Say;
  readonly record: RecordState;
  readonly voice: VoiceState;
  readonly speechTrouble: string | undefined;
}

/**
 * The lines between strand and question: the words that were heard and what they were taken for. What could not be
 * kept comes before that, then what keeps the voice away. The room for them never changes.
 */
export function HeardLine({ heard, notices, record, voice, speechTrouble }: HeardLineProps): JSX.Element {
  const trouble = record.kind === 'notKept' ? record.sentence : (ofEars(voice) ?? speechTrouble);
  return (
    <div
      class="heard-line"
      role="status"
      aria-label="Heard"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: text that may scroll has to be reachable by keys.
      tabIndex={0}
      data-trouble={trouble !== undefined}
    >
      {trouble ? <p>{trouble}</p> : null}
      <p>
        {heard ? <WhatWasHeard heard={heard} /> : null} <b>{sayText(notices)}</b>
      </p>
    </div>
  );
}

function ofEars(voice: VoiceState): string | undefined {
  switch (voice.kind) {
    case 'failed':
      return voice.sentence;
    case 'on':
      return voice.note;
    default:
      return undefined;
  }
}

/** The words of a voice, then what became of them. A button that did its work needs no words but the notices. */
function WhatWasHeard({ heard }: { readonly heard: LastHeard }): JSX.Element | null {
  const words = heard.words === '' ? null : <q>{heard.words}</q>;
  switch (heard.outcome) {
    case 'taken':
      return words ? <>I heard {words} →</> : null;
    case 'unclear':
      return <>That was not clear{words ? <>: {words}</> : null}. Say it again, or press a button.</>;
    case 'notForNow':
      return <>{words ?? 'That'} does not answer this question. Say what a button says, or press it.</>;
    case 'ambiguous':
      return <>That could be more than one answer{words ? <>: {words}</> : null}. Say just one.</>;
  }
}
