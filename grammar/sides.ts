/** Sides are named as seen from behind the baler, facing the way it travels (common practice, no source). */
export type Side = 'left' | 'right';

/** What `{subject}` stands for in a phrase template, and the side each form gives away. */
export const SUBJECTS: readonly { readonly words: string; readonly side?: Side }[] = [
  { words: 'it' },
  { words: 'the left one', side: 'left' },
  { words: 'the right one', side: 'right' },
];
