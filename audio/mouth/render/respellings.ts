/**
 * Words the synthesiser says wrongly, and a spelling that it says rightly. Only the synthesiser sees these; the screen
 * shows the word. Whole words, any case; capitals are not kept, since speech has none.
 */
const WORDS: Readonly<Record<string, string>> = {
  baler: 'bailer',
  balers: 'bailers',
  bight: 'bite',
  commonest: 'common ist',
  driveline: 'drive line',
  gearbox: 'gear box',
  metre: 'meeter',
  metres: 'meeters',
  millimetre: 'milla-meeter',
  millimetres: 'milla-meeters',
  mishear: 'miss hear',
  pto: 'pea tea owe',
  retie: 're tie',
  retied: 're tied',
  sisal: 'sigh sul',
  // The small unit, not the old pronoun.
  thou: 'thow',
  windrow: 'wind row',
  windrows: 'wind rows',
};

/** Words said in two ways, where the words around them tell which; the synthesiser always takes the other. */
const IN_CONTEXT: readonly { readonly written: RegExp; readonly spoken: string }[] = [
  // To shut. What is near is "close to" or "close by".
  { written: /\bclose\b(?! (?:to|by)\b)/gi, spoken: 'cloze' },
  { written: /\balways use\b/gi, spoken: 'always yuze' },
  // An order, not a memory.
  { written: /\bread the\b/gi, spoken: 'reed the' },
];

/** The text as the synthesiser should read it. */
export function respelled(text: string): string {
  const words = text.replace(/[A-Za-z]+/g, (word) => {
    const key = word.toLowerCase();
    return Object.hasOwn(WORDS, key) ? (WORDS[key] ?? word) : word;
  });
  return IN_CONTEXT.reduce((so, { written, spoken }) => so.replace(written, spoken), words);
}
