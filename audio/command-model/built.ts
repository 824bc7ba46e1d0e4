/** Written by `npm run model`; not to be edited. The bundled speech model that public/model/ holds. */
export const builtModel = {
  fileName: 'commands-b4fc7ee2.model',
  bytes: 3588548,
  sha256: 'b4fc7ee23833680da02d02ab8ab4f74b60c3d9272ae4a7cc1b88f5a04a9485d5',
  /** Of the phrases, words and pronunciations it was made from. */
  vocabularySha256: 'a00672fc968f0a0fcb0caa358663b12c83689d306e55df13aa2c7dbcfeccca2a',
} as const;
