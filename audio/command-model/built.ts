/** Written by `npm run model`; not to be edited. The bundled speech model that public/model/ holds. */
export const builtModel = {
  fileName: 'commands-eb3aa6eb.model',
  bytes: 2751068,
  sha256: 'eb3aa6ebf2f17dd3d3f2c2e3a8ed4491ae84fa35405254f59a3eff73462562e8',
  /** Of the phrases, words and pronunciations it was made from. */
  vocabularySha256: 'ee460e8a94a562a5cfa65b47af9497e8880c987593f2b4553b9e694afcca838c',
} as const;
