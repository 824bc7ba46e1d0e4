/**
 * `npm run model:field -- FILE`: takes the public small English speech model from disk, puts it where the app's build finds
 * it, and says what of the grammar it cannot hear. The folder is not kept in the repository.
 */
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { packFieldModel } from './pack-field-model.ts';
import { FIELD_MODEL_FOLDER } from './packed-field-model.ts';
import { SMALL_ENGLISH } from './published-archive.ts';

const folder = join(dirname(fileURLToPath(import.meta.url)), '../../public', FIELD_MODEL_FOLDER);
const [file] = process.argv.slice(2);

if (file === undefined) {
  console.error(`Name the archive: npm run model:field -- ${SMALL_ENGLISH.name}`);
  process.exitCode = 1;
} else {
  const outcome = packFieldModel(resolve(file), SMALL_ENGLISH, folder);
  if (outcome.ok) {
    const { packed, coverage } = outcome;
    console.log(
      `${packed.fileName}: ${packed.bytes} bytes. Build the app again and it is offered under Settings.`,
    );
    console.log(`Words it lacks: ${coverage.lackingWords.join(', ') || 'none'}.`);
    for (const { words, instead } of coverage.lostPhrases) {
      console.log(`Not heard: "${words}"; ${instead ? `"${instead}" is` : 'touch only'}.`);
    }
  } else {
    console.error(outcome.sentence);
    process.exitCode = 1;
  }
}
