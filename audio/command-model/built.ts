/** Written by `npm run model`; not to be edited. The bundled speech model that public/model/ holds. */
export const builtModel = {
  fileName: 'commands-11339a4d.model',
  bytes: 3638719,
  sha256: '11339a4d0e6114d1845da73994ad0dfad5701c6d83bb5e4666e405e9067e0f01',
  /** Of the phrases, words and pronunciations it was made from. */
  vocabularySha256: '45e786784dd605b151c5514775be0449a0063401b393a76c7456a49e174d0db6',
} as const;
