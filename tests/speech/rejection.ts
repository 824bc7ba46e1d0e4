/** Minutes of sound in which nobody speaks to the app: whatever it takes from them is a false command. */
import type { Recogniser } from '../../audio/ears/recogniser.ts';
import { seededRandom } from '../../flows/drill/seeded.ts';
import type { Expecting } from '../../grammar/expecting.ts';
import { riskOf } from '../../grammar/lexicon.ts';
import type { Risk } from '../../grammar/phrase-rule.ts';
import { type Understanding, understand } from '../../grammar/understand.ts';
import { openHearingDesk } from '../../src/session/hearing-desk.ts';
import { type Heard, hearScene } from './hear-scene.ts';
import { atUnitLevel, rms } from './noises/basics.ts';
import { coughs } from './noises/cough.ts';
import { hammerBlows } from './noises/hammer.ts';
import { drawn } from './random.ts';
import { recordedTalk, soundOf } from './recordings.ts';
import { noiseFrom, speechLevel } from './scenes.ts';
import { type SmallTalk, smallTalk } from './small-talk.ts';
import { sampleRate, spoken, withoutEdges } from './speak.ts';
import { allStates } from './states.ts';
import { voices } from './voices.ts';

/**
 * Levels at the tablet in dB(A). Our scenes' speech is somebody who raises the voice at arm's length, about 70, and so
 * was understood before; talk at some distance is 60 and a shout 75. ISO 9921, annex A: raised is 66 dB(A) at one metre, normal 60, loud 72; from memory.
 */
const speechDbA = 70;
const roomDbA = 40;

function gainFor(dbA: number): number {
  return speechLevel * 10 ** ((dbA - speechDbA) / 20);
}

/** Makes so many samples of what is heard beside the room. */
type Other = (samples: number, random: () => number) => Float32Array;

/** Flite's and Espeak's start at once; Festival takes longer to start than to speak. */
const talkers = voices.filter(({ engine }) => engine !== 'festival');

function talk(kind: SmallTalk, dbA: number, pauseSeconds: number): Other {
  return sayingOn(dbA, pauseSeconds, (random) => {
    const text = smallTalk[kind]
      .map((column) => drawn(column, random))
      .join(' ')
      .trim();
    return spoken(drawn(talkers, random), text);
  });
}

/** One utterance after the other, with pauses of up to twice so long between them. */
function sayingOn(dbA: number, pauseSeconds: number, next: (random: () => number) => Float32Array): Other {
  return (samples, random) => {
    const out = new Float32Array(samples);
    for (let at = 0; at < samples; ) {
      const said = atUnitLevel(next(random)).map((sample) => sample * gainFor(dbA));
      out.set(said.subarray(0, samples - at), at);
      at += said.length + Math.round(2 * random() * pauseSeconds * sampleRate);
    }
    return out;
  };
}

/** Peaks near 1 brought to a level over the room; no louder than a microphone takes. */
function peaksAt(
  make: (samples: number, rate: number, random: () => number) => Float32Array,
  gain: number,
): Other {
  return (samples, random) =>
    make(samples, sampleRate, random).map((sample) => Math.max(-1, Math.min(1, gain * sample)));
}

const levelled = (dbA: number, sound: Float32Array) => {
  const scale = gainFor(dbA) / rms(sound);
  return sound.map((sample) => sample * scale);
};

const silence: Other = (samples) => new Float32Array(samples);

export const kindsOfOther = {
  sentences: talk('sentences', 60, 2),
  'made sentences': talk('made sentences', 60, 2),
  names: talk('names', 60, 2),
  'other numbers': talk('other numbers', 60, 2),
  swearing: talk('swearing', 66, 2),
  'shouting to a helper': talk('shouting to a helper', 75, 2),
  'talk about the baler': talk('talk about the baler', 60, 2),
  radio: talk('radio', 60, 0.3),
  'recorded people': sayingOn(60, 1.5, (random) => withoutEdges(soundOf(drawn(recordedTalk, random)))),
  coughs: peaksAt(coughs, 0.4),
  'hammer blows': peaksAt(hammerBlows, 0.7),
  wind: (samples, random) => levelled(65, noiseFrom('wind', samples, random)),
  workshop: (samples, random) => levelled(65, noiseFrom('workshop', samples, random)),
  hail: (samples, random) => levelled(65, noiseFrom('hail', samples, random)),
  silence,
} as const satisfies Readonly<Record<string, Other>>;

export type KindOfOther = keyof typeof kindsOfOther;
export const KINDS_OF_OTHER = Object.keys(kindsOfOther) as readonly KindOfOther[];

/** Talk, which the promise of less than one false command an hour is about. */
export const talkKinds: readonly KindOfOther[] = KINDS_OF_OTHER.slice(0, KINDS_OF_OTHER.indexOf('coughs'));

export interface FalseCommands {
  readonly seconds: number;
  /** Stretches of sound that were taken for speech and decoded. */
  readonly decoded: number;
  readonly taken: readonly FalseCommand[];
}

export interface FalseCommand {
  readonly words: string;
  readonly risk: Risk;
  /** Whether it is read back and counts only when it is accepted: a question at the wrong time, and nothing worse. */
  readonly isAskedBack: boolean;
  /** Whether it is taken only where a lockout was begun: it voids that. */
  readonly needsLockout: boolean;
}

type Understood = Extract<Understanding, { outcome: 'understood' }>;

/**
 * @param minute which minute of that kind: each has its own sound and state, the same for the same seed
 * @param seconds how much of it, 2 to 60
 */
export async function hearOther(
  recogniser: Recogniser,
  kind: KindOfOther,
  minute: number,
  seed: number,
  seconds = 60,
): Promise<FalseCommands> {
  const random = seededRandom(seed * 1_000_003 + KINDS_OF_OTHER.indexOf(kind) * 1_009 + minute);
  const expecting = drawn(allStates, random);
  const samples = seconds * sampleRate;
  const room = levelled(roomDbA, noiseFrom('pink', samples, random));
  const other = kindsOfOther[kind](samples - sampleRate, random);
  // A second of the room first, as a microphone that was open before.
  for (const [i, sample] of other.entries()) room[sampleRate + i] = (room[sampleRate + i] as number) + sample;
  const understood = await hearScene(recogniser, room, expecting, 20 * Math.log10(speechLevel));
  return {
    seconds,
    decoded: understood.length,
    taken: understood.flatMap((heard) => {
      if (heard.outcome !== 'understood') return [];
      const { words, meaning } = heard;
      const withoutLockout = understand(words, { ...expecting, nothingToVoid: true }, heard.margin);
      return {
        words,
        risk: riskOf(meaning),
        isAskedBack: isAskedBack(heard, expecting),
        needsLockout: withoutLockout.outcome !== 'understood',
      };
    }),
  };
}

/** In a good grade and by nobody's choice. A figure or a count of misses reads its numbers back itself; counting bales does not. */
function isAskedBack({ meaning, slots, margin }: Understood & Heard, expecting: Expecting): boolean {
  const isCounting = expecting.meanings.includes('count.good');
  if (meaning.startsWith('value.') && !isCounting) return true;
  const event = { type: meaning, slots, channel: { by: 'voice', margin, snrDb: 0 } } as const;
  const asked = { state: isCounting ? 'count.bales' : '', expecting };
  return openHearingDesk(() => 'automatic').take({ event }, asked).kind === 'asks';
}
