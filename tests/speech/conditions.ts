/** What the bench measures: who says what into which noise, and what is listened for. */
import { NOISE_NAMES, noises } from './noises/noises.ts';
import { quietRoom, type Room } from './scenes.ts';
import {
  otherTalkTrials,
  phraseTrials,
  recordedNumberTrials,
  recordedTalkTrials,
  recordedWordTrials,
  type Trial,
  valueTrials,
} from './trials.ts';
import { type Use, voicesFor } from './voices.ts';

export interface Condition {
  readonly name: string;
  /** Conditions with the same one are added up at the end: the noises of one level together. */
  readonly pool: string;
  readonly trials: readonly Trial[];
  readonly room: Room;
}

const LEVELS_DB = [20, 15, 10, 5, 0];
const USES: readonly Use[] = ['tuning', 'judging'];
const LISTS = { state: 'list of a state', everything: 'everything active' } as const;
type Active = keyof typeof LISTS;

/** @param trialCount of each condition */
export function conditions(trialCount: number, seed: number): readonly Condition[] {
  return [...byVoices(trialCount, seed), ...byPeople(trialCount, seed)];
}

/**
 * Real people, quiet and beside an engine. Most costs and the lists were chosen without them. With them were chosen the detector's
 * least noise and the share of the heard sound in what is decoded, after noise suppression had made it deaf to their words; and
 * the costs of digits, with the single words of half of the speakers: right of those 28 -> 31 of 39, of the others 22 -> 28 of 37.
 */
function byPeople(trialCount: number, seed: number): readonly Condition[] {
  const plans: readonly (readonly [what: string, trials: readonly Trial[]])[] = [
    ['numbers, 8 kHz', recordedNumberTrials(seed)],
    ['single words that are commands', recordedWordTrials('commands', trialCount, seed)],
    ['single words that are none', recordedWordTrials('no commands', trialCount, seed)],
    ['sentences', recordedTalkTrials(trialCount, seed)],
  ];
  const rooms = { quiet: quietRoom, 'engine 10 dB': { noise: 'engine', snrDb: 10 } } as const;
  return plans
    .filter(([, trials]) => trials.length > 0)
    .flatMap(([what, trials]) =>
      Object.entries(rooms).map(([where, room]): Condition => {
        const name = `people ${what}, ${where}`;
        return { name, pool: name, trials, room };
      }),
    );
}

function byVoices(trialCount: number, seed: number): readonly Condition[] {
  return USES.flatMap((use) => {
    const voices = voicesFor(use);
    const inNoise = NOISE_NAMES.filter((name) => noises[name].use === use && name !== 'pink');
    const phrases = {
      state: phraseTrials(trialCount, 'state', voices, seed),
      everything: phraseTrials(trialCount, 'everything', voices, seed),
    };
    const values = valueTrials(trialCount, voices, seed);
    const talk = otherTalkTrials(trialCount, voices, seed);
    const condition = (what: string, where: string, trials: readonly Trial[], room: Room): Condition => ({
      name: `${use} ${what}, ${where}`,
      pool: `${use} ${what}, ${room.noise === 'pink' || room.shed ? where : `${room.snrDb} dB`}`,
      trials,
      room,
    });
    const each = (where: string, room: Room, lists: readonly Active[] = ['state', 'everything']) => [
      ...lists.map((active) => condition(`phrases (${LISTS[active]})`, where, phrases[active], room)),
      condition('numbers', where, values, room),
      condition('other talk', where, talk, room),
    ];
    const worst = inNoise[0] ?? 'engine';
    return [
      ...each('quiet', quietRoom),
      ...LEVELS_DB.flatMap((snrDb) =>
        inNoise.flatMap((noise) => each(`${noise} ${snrDb} dB`, { noise, snrDb })),
      ),
      ...(['near', 'far'] as const).flatMap((shed) => [
        ...each(`shed ${shed}`, { ...quietRoom, shed }, ['state']),
        ...each(`shed ${shed}, ${worst} 10 dB`, { noise: worst, snrDb: 10, shed }, ['state']),
      ]),
    ];
  });
}
