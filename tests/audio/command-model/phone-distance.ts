/**
 * How unlike two phrases sound: the least cost of turning the phones of one into those of the other. Source of the
 * method: V. Levenshtein, "Binary codes capable of correcting deletions, insertions, and reversals", 1966; the classes
 * are those of the ARPAbet's vowels and of the consonants' manner (CMU Pronouncing Dictionary, file cmudict.phones).
 */

const classes: readonly (readonly string[])[] = [
  ['IY', 'IH', 'EY', 'EH', 'AE'],
  ['AA', 'AO', 'AH', 'OW', 'UH', 'UW', 'ER'],
  ['AY', 'AW', 'OY'],
  ['P', 'B', 'T', 'D', 'K', 'G'],
  ['F', 'V', 'TH', 'DH', 'S', 'Z', 'SH', 'ZH', 'HH'],
  ['CH', 'JH'],
  ['M', 'N', 'NG'],
  ['L', 'R', 'W', 'Y'],
];
const classOf = new Map(classes.flatMap((phones, i) => phones.map((phone) => [phone, i] as const)));

/** A phone of the same class is half heard as the other; one that comes or goes is wholly another sound. */
const withinClass = 0.5;

/** @returns 0 for the same phones, up to the length of the longer one */
export function phoneDistance(a: readonly string[], b: readonly string[]): number {
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  a.forEach((phone, i) => {
    const row = [i + 1];
    b.forEach((other, j) => {
      const replaced = (above[j] ?? 0) + replacement(phone, other);
      row.push(Math.min(replaced, (above[j + 1] ?? 0) + 1, (row[j] ?? 0) + 1));
    });
    above = row;
  });
  return above[b.length] ?? 0;
}

function replacement(a: string, b: string): number {
  if (a === b) return 0;
  const known = classOf.get(a);
  return known !== undefined && known === classOf.get(b) ? withinClass : 1;
}
