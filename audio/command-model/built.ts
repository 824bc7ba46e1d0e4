/** Written by `npm run model`; not to be edited. The bundled speech model that public/model/ holds. */
export const builtModel = {
  fileName: 'commands-0fe7561c.model',
  bytes: 2750165,
  sha256: '0fe7561c6466208ab07762d9c1188a7811d567ac690579fc210a7822c68a7d28',
  /** Of the phrases, words and pronunciations it was made from. */
  vocabularySha256: 'd4c502e7cae93b0a4ed1b1d93fda51cf0ebac27a9ce044c1b2e20dd07c3108c4',
} as const;
