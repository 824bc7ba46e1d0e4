/** What the running app says about itself, beside what the charts say. Each has one recorded clip. */
export const SESSION_LINES = {
  notUnderstood: 'I did not get that.',
  notForNow: 'That does not answer this question.',
  whichOfTwo: 'I heard two things. Say just the one.',
  answerByButton: 'Use the big buttons. I am still listening.',
  noAnswer: 'I am still listening.',
  notKept: 'I could not keep that in the record. Look at the screen.',
  narrowBand: 'This microphone sounds like a telephone. I may mishear you.',
} as const;
