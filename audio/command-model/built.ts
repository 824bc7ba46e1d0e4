/** Written by `npm run model`; not to be edited. The bundled speech model that public/model/ holds. */
export const builtModel = {
  fileName: 'commands-06edf474.model',
  bytes: 2621200,
  sha256: '06edf4746e66a3284c079bbf899b63e6067a60174ce04f392ae7503725499e4c',
  /** Of the phrases, words and pronunciations it was made from. */
  vocabularySha256: 'b1c26719a3e6d19900613bb232e1aac2e86bb1e5758330b88b5ab56df80d40b5',
} as const;
