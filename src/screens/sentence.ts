/** "it keeps letting go" as it stands on a button: "It keeps letting go". Phrases are lower case for the recogniser. */
export function asSentence(words: string): string {
  return words.replace(/^./, (first) => first.toUpperCase()).replaceAll(/\bi\b/g, 'I');
}
