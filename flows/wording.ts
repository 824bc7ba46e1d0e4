import type { Say } from '../grammar/say.ts';

/** How somebody wants things called on their tablet. It changes words alone, never what is asked or judged. */
export interface Wording {
  readonly units: 'inch' | 'metric';
  /** Near side for left and off side for right, as drivers on the left of the road say it (common practice, no source). */
  readonly sides: 'leftAndRight' | 'nearAndOff';
}

export const USUAL_WORDING: Wording = { units: 'inch', sides: 'leftAndRight' };

/**
 * Sentences that name units, and their metric twins, rounded as somebody would say them. Where a number was given it
 * is read back in its own unit, so it has no place here.
 */
export const METRIC_SENTENCES: Readonly<Record<string, string>> = {
  'Anybody with you stands ten feet off, where they see you.':
    'Anybody with you stands three metres off, where they see you.',
  'Tell me the pull in pounds, or say how it holds against the other knotter.':
    'Tell me the pull in newtons, or say how it holds against the other knotter.',
  'Tell me the pull in pounds, or say how it lifts against the other knotter.':
    'Tell me the pull in newtons, or say how it lifts against the other knotter.',
  'Tell me the pull in pounds. Or say, drags a lot harder, or about even.':
    'Tell me the pull in newtons. Or say, drags a lot harder, or about even.',
  'Tell me the weaker pull in pounds. Or say, slips too easily, a good firm hold, or far too tight.':
    'Tell me the weaker pull in newtons. Or say, slips too easily, a good firm hold, or far too tight.',
  'How much play, in thou? Or say, loose and wobbles, or firm and tight.':
    'How much play, in millimetres? Or say, loose and wobbles, or firm and tight.',
  'Typical is forty to sixty pounds.': 'Typical is one hundred eighty to two hundred seventy newtons.',
  'Typical is ten to twenty pounds.': 'Typical is forty-five to ninety newtons.',
  'Typical is five to ten pounds on plastic twine, and less on sisal.':
    'Typical is twenty-two to forty-five newtons on plastic twine, and less on sisal.',
  'Typical is five to thirty thou.': 'Typical is one tenth to eight tenths of a millimetre.',
  'Typical is an eighth of an inch or less.': 'Typical is three millimetres or less.',
  'Typical is a sixteenth of an inch or less.': 'Typical is one and a half millimetres or less.',
  'Typical is a half to one inch.': 'Typical is thirteen to twenty-five millimetres.',
  'More than two or three inches of slack is loose.':
    'More than fifty to seventy-five millimetres of slack is loose.',
  'Typical is a light rub, or a gap of a thirty-second of an inch at most.':
    'Typical is a light rub, or a gap of eight tenths of a millimetre at most.',
};

/** What names a side, and its twin by near side and off side. Answers among them are phrases that are understood. */
export const NEAR_AND_OFF: Readonly<Record<string, string>> = {
  left: 'near side',
  right: 'off side',
  'on the left, seen from behind the baler': 'on the near side',
  'on the right, seen from behind the baler': 'on the off side',
  "it's always the left hand one": "it's always the near side one",
  'the right side every single time': 'the off side every single time',
  'The left one, seen from behind.': 'The near side one.',
  'The right one, seen from behind.': 'The off side one.',
  'missed on the left': 'missed on the near side',
  'missed on the right': 'missed on the off side',
  'Missed on the left.': 'Missed on the near side.',
  'Missed on the right.': 'Missed on the off side.',
  'new ball on the left': 'new ball on the near side',
  'new ball on the right': 'new ball on the off side',
  'New ball on the left.': 'New ball on the near side.',
  'New ball on the right.': 'New ball on the off side.',
  'Misses on the left:': 'Misses on the near side:',
  'Misses on the right:': 'Misses on the off side:',
  'How many misses on the left, seen from behind?': 'How many misses on the near side?',
  'How many misses on the right?': 'How many misses on the off side?',
  'More on the left.': 'More on the near side.',
  'More on the right.': 'More on the off side.',
  'As many on the left as on the right.': 'As many on the near side as on the off side.',
};

/** A fragment in somebody's own wording. */
export function worded(fragment: string, { units, sides }: Wording): string {
  const metric = units === 'metric' ? twin(METRIC_SENTENCES, fragment) : undefined;
  const named = sides === 'nearAndOff' ? twin(NEAR_AND_OFF, fragment) : undefined;
  return metric ?? named ?? fragment;
}

/** What is said, in somebody's own wording. */
export function sayWorded(say: Say, wording: Wording): Say {
  return say.map((fragment) => worded(fragment, wording));
}

/** Every fragment that only a wording can bring up. */
export function wordingInventory(): readonly string[] {
  return [...Object.values(METRIC_SENTENCES), ...Object.values(NEAR_AND_OFF)];
}

function twin(table: Readonly<Record<string, string>>, fragment: string): string | undefined {
  return Object.hasOwn(table, fragment) ? table[fragment] : undefined;
}
