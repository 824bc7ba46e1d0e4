/**
 * Which instructions take hands. A check that only looks may open a sentence with one of a few verbs of the eye;
 * anything else that tells somebody to do something is taken to mean hands on the machine. The list is short on
 * purpose: a new word is refused until somebody has thought about it.
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
  // How a statement or the front part of an instruction begins.
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
    'at',
    'then',
    'do',
    'ease',
    'bale',
  ],
];

/** How a question begins that asks for what was seen. */
const ASKS = [
  ...[
    'is',
    'are',
    'was',
    'were',
    'does',
    'do',
    'did',
    'has',
    'have',
    'can',
    'which',
    'what',
    'where',
    'when',
  ],
  ...['how', 'since', 'after', 'or', 'any'],
];

/**
 * The word that makes a text an instruction for hands, or undefined where it only looks or asks.
 * A question of one phrase ("Cracked, or sound?") offers its answers and instructs nobody.
 */
export function handWordIn(text: string): string | undefined {
  return sentences(text)
    .map(({ words, asks }) => {
      const first = words[0] ?? '';
      if (EYES_ONLY.includes(first) || (asks && (ASKS.includes(first) || words.length <= OFFERED_WORDS))) {
        return undefined;
      }
      return first;
    })
    .find((word) => word !== undefined);
}

/** Words of the longest question that only offers its answers. */
const OFFERED_WORDS = 4;

/** Whether the text has somebody turn the cycle round. */
export function turnsByHand(text: string): boolean {
  return /\bturn (it|the flywheel|the rim|slowly)\b/i.test(text);
}

function sentences(text: string): readonly { readonly words: readonly string[]; readonly asks: boolean }[] {
  return (text.match(/[^.?]+[.?]?/g) ?? [])
    .map((sentence) => ({
      words: sentence.toLowerCase().match(/[a-z'-]+/g) ?? [],
      asks: sentence.endsWith('?'),
    }))
    .filter(({ words }) => words.length > 0);
}
