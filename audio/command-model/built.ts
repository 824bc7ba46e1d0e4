/** Written by `npm run model`; not to be edited. The bundled speech model that public/model/ holds. */
export const builtModel = {
  fileName: 'commands-e65cb04e.model',
  bytes: 2849854,
  sha256: 'e65cb04e394281bac9c83bbcc92c1cc560a66e1a1d82de90e73ce3c7123524e9',
  /** Of the phrases, words and pronunciations it was made from. */
  vocabularySha256: '429f3afb770f77229181850d290e6dc04c4c4a1eee930703b2f0bad3c7bfac68',
} as const;
