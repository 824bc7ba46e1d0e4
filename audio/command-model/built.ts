/** Written by `npm run model`; not to be edited. The bundled speech model that public/model/ holds. */
export const builtModel = {
  fileName: 'commands-3bb17778.model',
  bytes: 2706463,
  sha256: '3bb17778050f5cdfb7cc6081c67365fe5459eee4eb37d09781b2ee6df40057c9',
  /** Of the phrases, words and pronunciations it was made from. */
  vocabularySha256: '201aa6369b420f12b2ca1ebdc570d40ca2f95d9942036c5b2b9a71d32e0652b3',
} as const;
