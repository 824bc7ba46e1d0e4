/**
 * `npm run model`: makes the bundled speech model from the published acoustic parameters and everything the grammar
 * can hear, writes it to public/model/ under a name that carries its hash, and records it in built.ts.
 */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readAcousticSource } from './acoustic-source.ts';
import { grammarVocabulary } from './grammar-vocabulary.ts';
import { packModel, vocabularyHash } from './packed-model.ts';
import { modelTuning } from './tuning.ts';

const here = dirname(fileURLToPath(import.meta.url));
const outputFolder = join(here, '../../public/model');

const vocabulary = grammarVocabulary();
const packed = packModel(readAcousticSource(), vocabulary, modelTuning);

mkdirSync(outputFolder, { recursive: true });
for (const old of readdirSync(outputFolder)) {
  if (old.startsWith('commands-')) rmSync(join(outputFolder, old));
}
writeFileSync(join(outputFolder, packed.fileName), packed.bytes);
writeFileSync(
  join(here, 'built.ts'),
  `/** Written by \`npm run model\`; not to be edited. The bundled speech model that public/model/ holds. */
export const builtModel = {
  fileName: '${packed.fileName}',
  bytes: ${packed.bytes.length},
  sha256: '${packed.sha256}',
  /** Of the phrases, words and pronunciations it was made from. */
  vocabularySha256: '${vocabularyHash(vocabulary)}',
} as const;
`,
);
const counts = Object.entries(packed.counts).map(([name, count]) => `${count} ${name}`);
console.log(`${packed.fileName}: ${packed.bytes.length} bytes; ${counts.join(', ')}`);
