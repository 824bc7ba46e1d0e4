/** What people say near a baler that is not meant for it, as parts to be put together: thousands of sentences a kind. */
import { otherTalk } from './other-talk.ts';

/** One is drawn of each column, in order. Swearing is kept mild. */
type Columns = readonly (readonly string[])[];

const people = [
  'mike',
  'susan',
  'old mister hansen',
  'your brother',
  'doctor brown',
  'the vet',
  'uncle joe',
  'katie',
];
const when = [
  'yesterday',
  'last week',
  'before breakfast',
  'in the afternoon',
  'on tuesday',
  'when he was young',
];

export const smallTalk = {
  sentences: [[...otherTalk]],
  'made sentences': [
    people,
    [
      'sold',
      'painted',
      'forgot about',
      'asked me for',
      'wants to buy',
      'drove over',
      'laughed at',
      'was looking for',
    ],
    [
      'the blue tractor',
      'a barrel of apples',
      'our garden fence',
      'the wedding cake',
      'some chickens',
      'that saddle',
    ],
    when,
  ],
  names: [
    ['', 'hey', 'hello', 'good morning', 'where is', 'that was'],
    [
      'mike',
      'susan',
      'mister hansen',
      'katie',
      'thomas',
      'elizabeth',
      'big joe',
      'grandma',
      'peter miller',
      'rex',
    ],
  ],
  'other numbers': [
    ['highway', 'it cost', 'the number is', 'channel', 'turn to page', 'we sold', 'he weighs', 'they paid'],
    [
      'thirty four',
      'six hundred',
      'five five five zero one nine nine',
      'twenty six dollars',
      'a quarter past nine',
    ],
    ['', 'they said', 'and change', 'more or less', 'on the radio'],
  ],
  swearing: [
    ['', 'oh', 'well', 'ah'],
    [
      'darn it',
      'damn thing',
      "for heaven's sake",
      'what the heck',
      'son of a gun',
      'you stupid piece of junk',
      'not again',
    ],
    ['', 'my thumb', 'that hurts', 'who left this here'],
  ],
  'shouting to a helper': [
    ['hey', 'mike', 'come on', 'look out', 'over here'],
    [
      'bring the truck round',
      'shut the gate',
      'hold the ladder',
      'throw me the rope',
      'mind the dog',
      'start unloading',
    ],
    ['', 'will you', 'quick', 'before it rains'],
  ],
  'talk about the baler': [
    ['did you', 'last year we', 'my father never', 'the dealer told me to', 'you should', 'why did he'],
    ['grease', 'sell', 'look at', 'worry about', 'replace', 'bend', 'lose'],
    ['the knotter', 'the needles', 'that twine', 'the key', 'the plunger', 'the billhook', 'the flywheel'],
    ['', ...when],
  ],
  radio: [
    [
      'tonight',
      'and now the weather',
      'in sports',
      'at the market',
      'coming up next',
      'traffic is slow',
      'he added that',
    ],
    [
      'rain will move in from the west',
      'the home team won by three',
      'corn closed two cents higher',
      'a song from the',
    ],
    [
      'with winds up to thirty miles an hour',
      'after a long second half',
      'while beans were unchanged',
      'early nineties',
    ],
  ],
} as const satisfies Readonly<Record<string, Columns>>;

export type SmallTalk = keyof typeof smallTalk;
