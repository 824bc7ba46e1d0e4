import { type Say, sayText } from '../../grammar/say.ts';

/** Ends a sentence, or leads on to what follows. */
const CLOSED = /[.?!:,]$/;

/**
 * What is spoken, as it is read. Spoken fragments need no stops between them; on the screen "twenty-five" "pounds"
 * "Is that right?" becomes "Twenty-five pounds. Is that right?".
 */
export function asRead(say: Say): string {
  const closed = say.map((fragment, at) => {
    const next = say[at + 1];
    return next !== undefined && /^[A-Z]/.test(next) && !CLOSED.test(fragment) ? `${fragment}.` : fragment;
  });
  return sayText(closed).replace(/^./, (first) => first.toUpperCase());
}
