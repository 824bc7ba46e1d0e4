/**
 * How the bundled model must be listened with. The browser's ears and the accuracy tests both follow this.
 *
 * 1. A speech detector bounds the utterance. Nothing else ever reaches the recogniser: no room, no waiting.
 * 2. When the utterance has ended, `prepareUtterance` (listening/) is given the room before it (`roomBeforeMs` of it,
 *    less is worse but works), the speech, and what came after. It takes out the noise and brings the speech's long-term
 *    spectrum to the one that the model expects. The model has no mean normalisation of its own, so a recogniser is
 *    never cold: there is no pre-roll, and one recogniser may be kept for as long as its list is.
 * 3. All of the prepared samples go to the recogniser in pieces of `chunkMs`, then `retrieveFinalResult` is asked for:
 *    an utterance's end is decided by the detector, never by the recogniser's endpoint rules, which are set out of the
 *    way. What the results before the final one hold, if any come, belongs to the utterance as well.
 * 4. Word times are multiplied by `recogniserTimeFactor`. They go on counting over a recogniser's life, so times are
 *    only of use where each utterance has a recogniser of its own. Words that lie outside the speech, by more than
 *    `edgeSlackMs`, are dropped.
 * 5. The list holds `DECOY_WORD` too: words of the language that resemble a short phrase and are none. Where the speech
 *    stands `clearFromDb` over the room, it holds `CLEAR_UNKNOWN_WORD` as well, which wins over phrases that fit only so
 *    well. Both are read as `[unk]`. For a stop call over our own voice neither is there.
 * 6. One utterance holds one phrase (or the words of one number). Anything else beside it is a reason to refuse:
 *    `[unk]`, a second phrase, a phrase that covers too little of the speech, or one said faster or slower than
 *    anybody speaks. `conf` is a posterior within the active list alone and close to 1 for wrong phrases too: low
 *    values are a reason to refuse, high ones prove nothing.
 */

/** Sound is given to the recogniser in pieces this long, milliseconds. */
export const chunkMs = 100;

/** How much of the room before an utterance is wanted to learn its noise from, milliseconds. */
export const roomBeforeMs = 3000;

/** The recogniser counts 0.03 s a frame, our model has 0.01 s: its times are multiplied by this. */
export const recogniserTimeFactor = 1 / 3;

/** A word may reach this far out of the detected speech, milliseconds: quiet beginnings and ends are missed. */
export const edgeSlackMs = 450;

/** The model's second word for speech that is no phrase: stricter, so of use only where phrases are heard clearly. */
export const CLEAR_UNKNOWN_WORD = '[unk-clear]';

/** Any of the words that sound nearly like one of a short phrase; read as `[unk]`. */
export const DECOY_WORD = '[unk-word]';

/** Speech over the room from which on phrases are heard clearly, decibels in the model's own bands. */
export const clearFromDb = 14;
