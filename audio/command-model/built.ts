/** Written by `npm run model`; not to be edited. The bundled speech model that public/model/ holds. */
export const builtModel = {
  fileName: 'commands-8c976a1b.model',
  bytes: 2708030,
  sha256: '8c976a1bba1b205fedaa318ca929ad8ebe2394ee2e6898c0ed2fc17d62ff1ac2',
  /** Of the phrases, words and pronunciations it was made from. */
  vocabularySha256: '032e9af0ce58e38f05313a38c330a70606aa627403df5f55d29e96dfe6ccbf56',
} as const;
