/**
 * What one meaning sounds like.
 *
 * `forms` are the ways a person says it; the first is the one prompts teach, so it is the longest a
 * person would still say with gloves on: length is what a recogniser hears best. One notation keeps
 * the lists short: `{subject}` stands for "it", "the left one" or "the right one" and fills the side slot; `{part}` for every part that
 * people name, and fills the part slot.
 */
export interface PhraseRule {
  readonly risk: Risk;
  readonly forms: readonly [string, ...string[]];
  /** What the machine says back so the speaker can catch a mishearing. Empty where the next prompt shows it anyway. */
  readonly readBack: string;
}

/**
 * How much a mishearing costs, which decides how it is confirmed.
 * - `navigation`: moves through the dialogue, changes no record.
 * - `answer`: goes into the record, echoed in the next prompt, withdrawn by "go back one".
 * - `confirm`: clears a lockout step; never from a near match, never in noise too loud to trust.
 * - `void`: takes the lockout away; a near match is good enough, hearing it wrongly only costs time.
 */
export type Risk = 'navigation' | 'answer' | 'confirm' | 'void';

/** Keeps the literal meaning names of a topic while checking every rule's shape. */
export function topic<const T extends Readonly<Record<string, PhraseRule>>>(rules: T): T {
  return rules;
}
