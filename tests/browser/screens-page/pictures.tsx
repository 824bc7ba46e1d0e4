import { render } from 'preact';
import { PARTS, type PartId } from '../../../flows/knotter.ts';
import { MEANING_IDS } from '../../../grammar/lexicon.ts';
import { answerPicture } from '../../../src/pictures/answer-picture.tsx';
import { PartPicture } from '../../../src/pictures/part-picture.tsx';
import '../../../src/app.css';

const root = document.getElementById('app');
if (!root) throw new Error('The page has no place for the pictures.');
render(
  <main aria-label="Pictures" style={{ display: 'grid', gridTemplateColumns: 'repeat(5, 1fr)', gap: '1rem' }}>
    <h1 style={{ gridColumn: '1 / -1' }}>Pictures</h1>
    {(Object.keys(PARTS) as PartId[]).map((part) => (
      <div key={part} style={{ height: '26rem' }}>
        <PartPicture part={part} />
      </div>
    ))}
    {MEANING_IDS.map((meaning) => {
      const picture = answerPicture(meaning);
      return picture ? (
        <figure key={meaning} style={{ width: '12rem', margin: 0 }}>
          {picture}
          <figcaption>{meaning}</figcaption>
        </figure>
      ) : null;
    })}
  </main>,
  root,
);
