/** Written by `npm run model`; not to be edited. The bundled speech model that public/model/ holds. */
export const builtModel = {
  fileName: 'commands-c3ad8550.model',
  bytes: 2838699,
  sha256: 'c3ad8550f4ac3b50cfefd41826537dcf15c3f4f5e6aa9dc9cfdfb8790a55f9f9',
  /** Of the phrases, words and pronunciations it was made from. */
  vocabularySha256: 'caee90f56878a1a42acb7621bed413f6298a837b715a753f732ae1d59b3c7272',
} as const;
