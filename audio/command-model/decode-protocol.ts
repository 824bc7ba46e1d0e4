/** Sound is given to the recogniser in pieces this long; it looks for an utterance's end once a piece. */
export const chunkSeconds = 0.1;
/** The recogniser counts 0.03 s a frame, our model has 0.01 s: its times are multiplied by this. */
export const recogniserTimeFactor = 1 / 3;
/** How much of the room's sound, without our own voice, goes into a new recogniser before it listens. */
export const preRollSeconds = 3;
