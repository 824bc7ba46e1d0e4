/** Written by `npm run model`; not to be edited. The bundled speech model that public/model/ holds. */
export const builtModel = {
  fileName: 'commands-5b7e09da.model',
  bytes: 3266552,
  sha256: '5b7e09dab75c59887e01c3c5838c331cc040a9a2017bb734a028ee5d1de56e76',
  /** Of the phrases, words and pronunciations it was made from. */
  vocabularySha256: '9eeb7c037f59171bb322a5d714647db27ac8fd3f5c5e78e80cc79fc2381d1854',
} as const;
