/** Written by `npm run model`; not to be edited. The bundled speech model that public/model/ holds. */
export const builtModel = {
  fileName: 'commands-6bf751ef.model',
  bytes: 2850755,
  sha256: '6bf751ef8e7311bf9e96fb8177535d5fa0a64e2b57dda0d65b55f6c0f35a9042',
  /** Of the phrases, words and pronunciations it was made from. */
  vocabularySha256: '5fa7fe8a6a7f4a24de7df7331e48df45ee07610c460964c6eb7729f38c3123f3',
} as const;
