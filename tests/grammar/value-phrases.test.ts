import { describe, expect, it, test } from 'vitest';
import { recogniserList } from '../../grammar/compile.ts';
import { graphPhrases } from '../../grammar/lexicon.ts';
import {
  type Dimension,
  readMeasurement,
  readMissCount,
  readWholeNumber,
} from '../../grammar/measurements.ts';
import { MISS_COUNTS, ROUND_NUMBERS, WHOLE_VALUES } from '../../grammar/value-phrases.ts';

const dimensions = (Object.keys(WHOLE_VALUES) as Dimension[]).filter((each) => WHOLE_VALUES[each].length > 0);

/** The number reader is slow: of values that differ by their number alone some are enough. */
const some = (values: readonly string[]) => values.filter((_, i) => i % 3 === 0);

describe.each(dimensions)('a whole value of %s', (dimension) => {
  it('reads as an amount of that dimension', () => {
    const read = some(WHOLE_VALUES[dimension]).map((words) => ({
      words,
      ...readMeasurement(words, dimension),
    }));
    expect(read.filter(({ ok }) => !ok)).toEqual([]);
  });

  it('is one word of the graph and of the list', () => {
    const graph = new Set(graphPhrases());
    const list = new Set(recogniserList({ meanings: [], value: { kind: 'measurement', dimension } }));
    for (const words of WHOLE_VALUES[dimension]) {
      expect(graph).toContain(words);
      expect(list).toContain(words.replaceAll(' ', '_'));
    }
  });
});

test('a round number is a number, or the beginning of one', () => {
  for (const words of ROUND_NUMBERS) {
    expect(readWholeNumber(words.endsWith(' and') ? `${words} five` : words), words).toBeDefined();
  }
});

test('a count of misses is a count, or the beginning of one', () => {
  for (const words of some(MISS_COUNTS)) {
    expect(readMissCount(words.endsWith(' of') ? `${words} fifty` : words), words).toMatchObject({
      ok: true,
    });
  }
});

test('amounts that belong together are heard together, of every kind', () => {
  // What the ears mistook while they were put together from short words.
  expect(WHOLE_VALUES.force).toEqual(
    expect.arrayContaining(['forty pounds', 'sixty newtons', 'a hundred pounds']),
  );
  expect(WHOLE_VALUES.length).toEqual(
    expect.arrayContaining([
      'half an inch',
      'one and a half inches',
      'three sixteenths of an inch',
      'nine thousand feet',
    ]),
  );
  expect(WHOLE_VALUES.rotation).toEqual(
    expect.arrayContaining(['half a turn', 'two turns', 'one and a half turns']),
  );
});
