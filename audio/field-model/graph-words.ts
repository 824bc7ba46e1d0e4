/**
 * The words a model's graph knows. The small public models ship no words.txt: their words are in a symbol table inside the
 * language graph Gr.fst, which the recogniser prefers to words.txt even where there is one.
 * Source of the format: FstHeader::Read in fst.cc and SymbolTableImpl::Read in symbol-table.cc of OpenFst 1.8 (Apache 2.0);
 * of the preference: Model::ReadDataFiles in src/model.cc of vosk-api (Apache 2.0).
 */
import { ByteCursor } from '../command-model/byte-cursor.ts';

/** A word and its number in the graph. */
export type NumberedWord = readonly [word: string, id: number];

const graphMagic = 2125659606;
const symbolTableMagic = 2125658996;
const hasInputSymbols = 1;
const hasOutputSymbols = 2;

/**
 * The output symbols inside an OpenFst graph of any type, or undefined where it carries none.
 * @throws Error naming the file when it is no graph, or is cut short
 */
export function outputSymbols(graph: Uint8Array, fileName: string): readonly NumberedWord[] | undefined {
  const cursor = new ByteCursor(graph, fileName);
  if (cursor.int32() !== graphMagic) throw new Error(`${fileName} is not an OpenFst graph.`);
  skipText(cursor); // the type of graph
  skipText(cursor); // the type of its arcs
  cursor.skip(4); // version
  const flags = cursor.int32();
  cursor.skip(8 * 4); // properties, start, counts of states and arcs
  if (flags & hasInputSymbols) readSymbolTable(cursor, fileName);
  return flags & hasOutputSymbols ? readSymbolTable(cursor, fileName) : undefined;
}

/** Lines of `word id`, as in words.txt. */
export function readWordsFile(content: Uint8Array): readonly NumberedWord[] {
  const lines = new TextDecoder().decode(content).split('\n');
  return lines.flatMap((line): NumberedWord[] => {
    const [word, id] = line.split(/\s+/);
    return word && id ? [[word, Number(id)]] : [];
  });
}

export function writeWordsFile(words: readonly NumberedWord[]): Uint8Array {
  return new TextEncoder().encode(words.map(([word, id]) => `${word} ${id}\n`).join(''));
}

function readSymbolTable(cursor: ByteCursor, fileName: string): readonly NumberedWord[] {
  if (cursor.int32() !== symbolTableMagic) throw new Error(`${fileName} holds no readable symbol table.`);
  skipText(cursor); // its name
  cursor.skip(8); // the next free number
  const count = int64(cursor);
  const words: NumberedWord[] = [];
  for (let i = 0; i < count; i++) words.push([text(cursor), int64(cursor)]);
  return words;
}

function text(cursor: ByteCursor): string {
  return new TextDecoder().decode(cursor.byteArray(cursor.int32()));
}

function skipText(cursor: ByteCursor): void {
  cursor.skip(cursor.int32());
}

/** Numbers of words are far below 2^53. */
function int64(cursor: ByteCursor): number {
  return cursor.uint32() + 2 ** 32 * cursor.int32();
}
