/**
 * Words the synthesiser says wrongly, and a spelling that it says rightly. Only the synthesiser sees these; the screen
 * shows the word. Whole words, any case; a capital at the start is not kept, since speech has none.
 */
export const RESPELLINGS: Readonly<Record<string, string>> = {
  baler: 'bailer',
  balers: 'bailers',
  bight: 'bite',
  driveline: 'drive line',
  gearbox: 'gear box',
  metre: 'meeter',
  metres: 'meeters',
  millimetre: 'milla-meeter',
  millimetres: 'milla-meeters',
  pto: 'pea tea owe',
  retie: 're tie',
  retied: 're tied',
  // The small unit, not the old pronoun.
  thou: 'thow',
};

/** The text as the synthesiser should read it. */
export function respelled(text: string): string {
  return text.replace(/[A-Za-z]+/g, (word) => {
    const key = word.toLowerCase();
    return Object.hasOwn(RESPELLINGS, key) ? (RESPELLINGS[key] ?? word) : word;
  });
}
