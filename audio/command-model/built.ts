/** Written by `npm run model`; not to be edited. The bundled speech model that public/model/ holds. */
export const builtModel = {
  fileName: 'commands-10c3755f.model',
  bytes: 3707295,
  sha256: '10c3755f0830797cca72f364232919267b542bf747a68b461751bd8bb6ed767c',
  /** Of the phrases, words and pronunciations it was made from. */
  vocabularySha256: '387c0b6d4a29f4bf84ac8f511b377d81349b6f8e4447866575a0a4f787b85864',
} as const;
