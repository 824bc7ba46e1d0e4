import { describe, expect, it } from 'vitest';
import { Graph, writeVectorGraph } from '../../../audio/command-model/openfst-vector.ts';
import { outputSymbols, readWordsFile, writeWordsFile } from '../../../audio/field-model/graph-words.ts';
import { withOutputSymbols } from './stand-in.ts';

// That OpenFst itself reads such a table is seen where the recogniser loads one: tests/speech/field-model.test.ts.

const graph = writeVectorGraph(new Graph());
const words = [
  ['<eps>', 0],
  ['[unk]', 1],
  ['knotter', 2],
  ['señor', 70_000],
] as const;

describe('the words inside a graph', () => {
  it('are read with their numbers, letters beyond ASCII too', () => {
    expect(outputSymbols(withOutputSymbols(graph, words), 'Gr.fst')).toEqual(words);
  });

  it('are none where the graph carries none', () => {
    expect(outputSymbols(graph, 'Gr.fst')).toBeUndefined();
  });

  it('are refused where the file is no graph, or ends in the middle of them', () => {
    expect(() => outputSymbols(new TextEncoder().encode('no graph at all'), 'Gr.fst')).toThrow(
      'Gr.fst is not an OpenFst graph.',
    );
    const whole = withOutputSymbols(graph, words);
    expect(() => outputSymbols(whole.subarray(0, whole.length - graph.length), 'Gr.fst')).toThrow(
      'Gr.fst is cut short',
    );
  });
});

describe('the words file', () => {
  it('is read as it is written, whatever white space stands between', () => {
    expect(readWordsFile(writeWordsFile(words))).toEqual(words);
    expect(readWordsFile(new TextEncoder().encode('<eps>\t0\n[unk]   1\n\n'))).toEqual(words.slice(0, 2));
  });
});
