import { describe, expect, it } from 'vitest';
import { convert } from '../../flows/figures/units.ts';
import { INPUT_IDS, inputOf } from '../../flows/figures-asked/inputs.ts';
import {
  METRIC_SENTENCES,
  NEAR_AND_OFF,
  sayWorded,
  USUAL_WORDING,
  worded,
  wordingInventory,
} from '../../flows/wording.ts';
import { allPhrases, MEANING_IDS, taughtForm } from '../../grammar/lexicon.ts';
import { sayInventory } from '../../grammar/say.ts';
import { spokenTexts } from '../../src/build/spoken-texts.ts';

const METRIC = { ...USUAL_WORDING, units: 'metric' } as const;
const NEAR = { ...USUAL_WORDING, sides: 'nearAndOff' } as const;

/** Fragments of a value carry the unit it was given or worked out in. */
const IN_VALUES = new Set(sayInventory());
const spoken = spokenTexts().filter((text) => !IN_VALUES.has(text) && !wordingInventory().includes(text));

/**
 * The numbers of each pair as a person reads them out of the two sentences, [customary, unit, metric, unit]; how they
 * belong together is then left to the conversion factors of NIST SP 811, which `convert` is tested against.
 */
const NUMBERS: Readonly<
  Record<string, readonly (readonly [number, 'in' | 'ft' | 'thou' | 'lbf', number])[]>
> = {
  'Anybody with you stands ten feet off, where they see you.': [[10, 'ft', 3000]],
  'Typical is forty to sixty pounds.': [
    [40, 'lbf', 180],
    [60, 'lbf', 270],
  ],
  'Typical is ten to twenty pounds.': [
    [10, 'lbf', 45],
    [20, 'lbf', 90],
  ],
  'Typical is five to ten pounds on plastic twine, and less on sisal.': [
    [5, 'lbf', 22],
    [10, 'lbf', 45],
  ],
  'Typical is five to thirty thou.': [
    [5, 'thou', 0.1],
    [30, 'thou', 0.8],
  ],
  'Typical is an eighth of an inch or less.': [[1 / 8, 'in', 3]],
  'Typical is a sixteenth of an inch or less.': [[1 / 16, 'in', 1.5]],
  'Typical is a half to one inch.': [
    [0.5, 'in', 13],
    [1, 'in', 25],
  ],
  'More than two or three inches of slack is loose.': [
    [2, 'in', 50],
    [3, 'in', 75],
  ],
  'Typical is a light rub, or a gap of a thirty-second of an inch at most.': [[1 / 32, 'in', 0.8]],
};

describe('metric wording', () => {
  it('has a twin for every sentence that names a customary unit, and no twin names one', () => {
    const named = /\b(inch|inches|foot|feet|pounds?|thou)\b/i;
    // What a person may say, in either system, is not put into another one.
    const offered = new Set([...MEANING_IDS.map(taughtForm), 'Inches and pounds.']);
    // A bare number is taken in one unit alone, so its question has to name that one.
    for (const { name, ask, takes } of INPUT_IDS.map(inputOf)) {
      if (takes.kind === 'count') offered.add(name).add(ask);
    }
    const untouched = spoken.filter(
      (text) => named.test(text) && !/\b(metres?|kilos?)\b/.test(text) && !offered.has(text),
    );
    expect(untouched.filter((text) => worded(text, METRIC) === text)).toEqual([]);
    for (const twin of Object.values(METRIC_SENTENCES)) expect(twin).not.toMatch(named);
  });

  it('says the same lengths and pulls, rounded by no more than a fifth of what is least and a twentieth of the rest', () => {
    const withNumbers = Object.keys(METRIC_SENTENCES).filter((text) => !/^(Tell|How much)/.test(text));
    expect(Object.keys(NUMBERS).sort()).toEqual(withNumbers.sort());
    for (const [sentence, pairs] of Object.entries(NUMBERS)) {
      for (const [amount, unit, metric] of pairs) {
        const exact =
          unit === 'lbf' ? convert('force', amount, 'lbf', 'N') : convert('length', amount, unit, 'mm');
        const off = Math.abs(metric / exact - 1);
        expect(off, `${sentence} ${exact}`).toBeLessThan(exact < 1 ? 0.22 : 0.06);
      }
    }
  });
});

describe('near side and off side', () => {
  it('has a twin for everything that names a side of the baler, and no twin names left or right', () => {
    const side = /\b(?:on the|the) (?:left|right)\b|^(?:left|right)$/i;
    // "The right order" and "the right one" of several are no sides; who hears "near side" is told which it is.
    const other = /right order|are the right one|near side/i;
    const named = spokenTexts().filter((text) => side.test(text) && !other.test(text));
    expect(named.filter((text) => worded(text, NEAR) === text)).toEqual([]);
    for (const twin of Object.values(NEAR_AND_OFF)) expect(twin).not.toMatch(/\b(left|right)\b/);
  });

  it('offers only answers that are understood as the same', () => {
    const meaningOf = (words: string) => allPhrases().find((phrase) => phrase.words === words)?.meaning;
    for (const meaning of MEANING_IDS) {
      const offered = worded(taughtForm(meaning), NEAR);
      if (offered !== taughtForm(meaning)) expect(meaningOf(offered), offered).toBe(meaning);
    }
  });
});

describe('a wording', () => {
  it('changes nothing where nothing was chosen, and only words there are', () => {
    expect(sayWorded(spoken, USUAL_WORDING)).toEqual(spoken);
    const twins = [METRIC_SENTENCES, NEAR_AND_OFF].flatMap(Object.keys);
    expect(twins.filter((text) => !spokenTexts().includes(text))).toEqual([]);
  });
});
