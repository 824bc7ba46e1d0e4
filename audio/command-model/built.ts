/** Written by `npm run model`; not to be edited. The bundled speech model that public/model/ holds. */
export const builtModel = {
  fileName: 'commands-678fb65f.model',
  bytes: 3647647,
  sha256: '678fb65feeba5986af50fa436aea57bbe31bfcd1e374407ec4a7ae6e6e0cb853',
  /** Of the phrases, words and pronunciations it was made from. */
  vocabularySha256: 'b157c293c8653b1bbd9e6b6e5ceeeec7a3bc2efd4f2140979626edc713158644',
} as const;
