import { spokenByFlows } from '../../flows/spoken.ts';
import { wordingInventory } from '../../flows/wording.ts';
import { MEANING_IDS, ruleOf, taughtForm } from '../../grammar/lexicon.ts';
import { READING_LINES } from '../../grammar/reading.ts';
import { sayInventory } from '../../grammar/say.ts';
import { SETTING_LINES } from '../screens/spoken-settings.ts';
import { SESSION_LINES } from '../session/lines.ts';

/** Every fragment the app can speak, once each: what `npm run voice` renders and the tests hold speech against. */
export function spokenTexts(): readonly string[] {
  const readBacks = MEANING_IDS.map((meaning) => ruleOf(meaning).readBack);
  const taught = MEANING_IDS.map(taughtForm);
  return [
    ...new Set([
      ...sayInventory(),
      ...spokenByFlows(),
      ...wordingInventory(),
      ...readBacks,
      ...taught,
      ...Object.values(READING_LINES),
      ...Object.values(SESSION_LINES),
      ...Object.values(SETTING_LINES),
    ]),
  ].filter((text) => text !== '');
}
