import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LARGEST_SEED } from '../../../flows/drill/hidden-fault.ts';
import { DRILL_LEVELS } from '../../../flows/drill/levels.ts';
import { SET_UP_LINES } from '../../../flows/drill/lines.ts';
import {
  isSeed,
  LEVEL_MEANINGS,
  NEW_SET_UP,
  type SetUp,
  saySetUp,
  setUpAfter,
  setUpPrompt,
} from '../../../flows/drill/set-up.ts';
import { MEANING_IDS, type MeaningId } from '../../../grammar/lexicon.ts';
import { sayText } from '../../../grammar/say.ts';
import type { Slots } from '../../../grammar/understand.ts';
import { unspeakable } from '../figures-asked/say-everything.ts';
import { TestJob } from '../talk.ts';

const ANY = 417;
const levels = fc.constantFrom(...DRILL_LEVELS);

/** The set-up after these were said, each of which it has to take. */
function setUpWith(...saying: readonly (readonly [MeaningId, Slots?])[]): SetUp {
  return saying.reduce<SetUp>((setUp, [type, slots = {}]) => {
    const next = setUpAfter(setUp, { type, slots }, () => ANY);
    if (!next) throw new Error(`${type} is not taken at ${setUp.at}.`);
    return next;
  }, NEW_SET_UP);
}

describe('a drill set up aloud', () => {
  it('is the level and the number that were said, once they were accepted', () => {
    fc.assert(
      fc.property(levels, fc.nat(LARGEST_SEED), (level, count) => {
        const said = [[LEVEL_MEANINGS[level]], ['value.count', { count }]] as const;
        expect(setUpWith(...said, ['yes'])).toEqual({ at: 'ready', setup: { level, seed: count } });
        expect(setUpWith(...said, ['no'])).toEqual(NEW_SET_UP);
        expect(setUpWith(...said)).not.toHaveProperty('at', 'ready');
      }),
    );
  });

  it('is any number for whoever wants any', () => {
    expect(setUpWith(['drill.levelThree'], ['drill.anyNumber'], ['yes'])).toEqual({
      at: 'ready',
      setup: { level: 3, seed: ANY },
    });
  });

  it('asks again for a number that makes no drill, and says which do', () => {
    const setUp = setUpWith(['drill.levelOne'], ['value.count', { count: LARGEST_SEED + 1 }]);
    expect(setUp.at).toBe('number');
    expect(setUpPrompt(setUp, new TestJob().prompt).notices).toEqual([SET_UP_LINES.noSuchNumber]);
    expect(isSeed(-1) || isSeed(1.5) || isSeed(Number.NaN)).toBe(false);
  });

  it('takes whatever its prompt asks for, reads the digits back, and can be spoken', () => {
    fc.assert(
      fc.property(levels, fc.nat(LARGEST_SEED), (level, count) => {
        const stages = [
          NEW_SET_UP,
          setUpWith([LEVEL_MEANINGS[level]]),
          setUpWith([LEVEL_MEANINGS[level]], ['value.count', { count }]),
        ];
        for (const setUp of stages) {
          const prompt = setUpPrompt(setUp, new TestJob().prompt);
          expect(prompt.safety).toBe('keepOut');
          expect(unspeakable([...prompt.notices, ...prompt.question, ...prompt.why])).toEqual([]);
          for (const type of prompt.expecting.meanings)
            expect(
              setUpAfter(setUp, { type, slots: {} }, () => ANY),
              type,
            ).toBeDefined();
        }
        const digits = saySetUp({ level, seed: count }).slice(2, 2 + String(count).length);
        expect(digits).toHaveLength(String(count).length);
        expect(sayText(digits)).not.toMatch(/teen|ty|hundred/);
      }),
      { numRuns: 30 },
    );
  });

  it('is moved by nothing that belongs to a job', () => {
    const meanings = MEANING_IDS.filter((type) => !type.startsWith('drill.'));
    for (const type of meanings)
      expect(setUpAfter(NEW_SET_UP, { type, slots: {} }, () => ANY)).toBeUndefined();
  });
});
