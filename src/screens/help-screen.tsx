import type { JSX } from 'preact';
import { taughtForm, UNIVERSAL_MEANINGS } from '../../grammar/lexicon.ts';
import { CyclePlayer } from '../pictures/cycle-player.tsx';
import { Cautions } from './cautions.tsx';
import { Page } from './page.tsx';
import { asSentence } from './sentence.ts';

/** What the app is for, what can always be said, and how a knot is tied. */
export function HelpScreen(): JSX.Element {
  return (
    <Page title="Help">
      <p>
        Start a job, switch the voice on, and answer aloud. Everything that can be said is also a button. In a
        job, say “what can I say here” and the answers of that question are read out.
      </p>
      <section>
        <h2>These always work</h2>
        <ul class="sayable">
          {UNIVERSAL_MEANINGS.map((meaning) => (
            <li key={meaning}>{asSentence(taughtForm(meaning))}</li>
          ))}
        </ul>
      </section>
      <section>
        <h2>The plate at the edge</h2>
        <p>
          It says how near you may go: in the seat, out, eyes only, hands on the rim only, or hands in. It
          goes back to “keep out” by itself when anything changes, and it never goes forward without your own
          words.
        </p>
      </section>
      <section>
        <h2>One tie, step by step</h2>
        <CyclePlayer />
      </section>
      <Cautions />
    </Page>
  );
}
