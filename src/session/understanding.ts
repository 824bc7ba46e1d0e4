/** What takes words to meanings. It reads spoken numbers, which is heavy, so it is loaded beside the recogniser. */
export { understand } from '../../grammar/understand.ts';
