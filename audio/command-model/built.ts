/** Written by `npm run model`; not to be edited. The bundled speech model that public/model/ holds. */
export const builtModel = {
  fileName: 'commands-74987dc4.model',
  bytes: 3706641,
  sha256: '74987dc429015caf133ef920c1ea174784c556eabcb0a3f407368d8426a01b1a',
  /** Of the phrases, words and pronunciations it was made from. */
  vocabularySha256: 'a00672fc968f0a0fcb0caa358663b12c83689d306e55df13aa2c7dbcfeccca2a',
} as const;
