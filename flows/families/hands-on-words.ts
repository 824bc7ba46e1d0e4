/**
 * Which instructions take hands. A sentence may open with one of a few verbs of the eye; any other opening is taken
 * to mean hands on the machine. The list is short on purpose: a new word is refused until somebody has thought
 * about it.
 */
const EYES_ONLY = [
  // What eyes, ears, a torch and a telephone do.
  ...[
    'look',
    'shine',
    'read',
    'compare',
    'follow',
    'watch',
    'listen',
    'stand',
    'think',
    'see',
    'ask',
    'count',
  ],
  // What is done at the tractor or on the ground, after a test run rather than beside the machine.
  ...['leave', 'keep', 'call', 'write', 'photograph', 'tell', 'walk', 'rake', 'stay', 'drive', 'run', 'wait'],
  ...['ease', 'bale'],
  // How a statement, a warning or the front part of an instruction begins.
  ...[
    'from',
    'with',
    'both',
    'the',
    'a',
    'this',
    'nothing',
    'only',
    'on',
    'off',
    'at',
    'then',
    'do',
    'never',
    'or',
  ],
];

/** A question may begin in any way but with one of these. */
const HANDS = [
  ...[
    'pull',
    'push',
    'press',
    'hook',
    'draw',
    'feel',
    'lift',
    'shake',
    'pry',
    'measure',
    'turn',
    'hold',
    'slide',
  ],
  ...[
    'open',
    'try',
    'wipe',
    'touch',
    'mark',
    'paint',
    'tighten',
    'loosen',
    'fit',
    'pick',
    'snap',
    'bend',
    'move',
  ],
];

/** The word that makes a text an instruction for hands, or undefined where it only looks or asks. */
export function handWordIn(text: string): string | undefined {
  return sentences(text)
    .filter(({ first, asks }) => (asks ? HANDS.includes(first) : !EYES_ONLY.includes(first)))
    .map(({ first }) => first)[0];
}

/** Whether the text has somebody turn the cycle round. */
export function turnsByHand(text: string): boolean {
  return /\bturn (it|the flywheel|the rim|slowly)\b/i.test(text);
}

function sentences(text: string): readonly { readonly first: string; readonly asks: boolean }[] {
  return (text.match(/[^.?]+[.?]?/g) ?? []).flatMap((sentence) => {
    const first = sentence.toLowerCase().match(/[a-z'-]+/)?.[0];
    return first === undefined ? [] : [{ first, asks: sentence.endsWith('?') }];
  });
}
