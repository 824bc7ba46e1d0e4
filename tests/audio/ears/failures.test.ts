import { describe, expect, it } from 'vitest';
import { describeFailure, describePassedOver, type EarsFailure } from '../../../audio/ears/failures.ts';

/** One of each kind: a new kind does not compile until it stands here. */
const oneOfEach: { readonly [Kind in EarsFailure['kind']]: Extract<EarsFailure, { kind: Kind }> } = {
  'insecure-origin': { kind: 'insecure-origin' },
  'no-audio-support': { kind: 'no-audio-support' },
  'microphone-refused': { kind: 'microphone-refused' },
  'no-microphone': { kind: 'no-microphone' },
  'microphone-busy': { kind: 'microphone-busy' },
  'microphone-unplugged': { kind: 'microphone-unplugged' },
  'microphone-muted': { kind: 'microphone-muted' },
  'microphone-stalled': { kind: 'microphone-stalled' },
  'needs-a-tap': { kind: 'needs-a-tap' },
  'capture-failed': { kind: 'capture-failed', detail: 'no reason given' },
  'front-end-died': { kind: 'front-end-died', detail: 'no reason given' },
  'model-offline': { kind: 'model-offline' },
  'model-missing': { kind: 'model-missing', httpStatus: 404 },
  'model-cut-short': { kind: 'model-cut-short', gotBytes: 10, wantedBytes: 20 },
  'model-altered': { kind: 'model-altered' },
  'model-timed-out': { kind: 'model-timed-out' },
  'storage-full': { kind: 'storage-full' },
  'storage-unavailable': { kind: 'storage-unavailable' },
  'recogniser-unloadable': { kind: 'recogniser-unloadable', detail: 'no reason given' },
  'recogniser-died': { kind: 'recogniser-died', detail: 'no reason given' },
  'recogniser-stuck': { kind: 'recogniser-stuck' },
  'phrase-unknown': { kind: 'phrase-unknown', words: ['billhook'] },
};

describe('what is said of a failure', () => {
  const sentences = Object.values(oneOfEach).map(describeFailure);

  it.each(sentences)('one sentence, then what still works: %s', (sentence) => {
    expect(sentence).toMatch(/^[A-Z][^.!]+\. Touch still works\.$/);
  });

  it.each(Object.values(oneOfEach).map(describePassedOver))(
    'where another model listens, that one is named: %s',
    (sentences) => {
      expect(sentences).toMatch(
        /^The field model is not in use\. [A-Z][^.!]+\. The bundled speech model listens instead\.$/,
      );
    },
  );

  it('differs for each', () => {
    expect(new Set(sentences).size).toBe(sentences.length);
  });
});
