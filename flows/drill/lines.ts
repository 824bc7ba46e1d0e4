/** What a drill says beside what the job says. */
export const DRILL_LINES = {
  begins: 'This is a drill. Keep away from any real machine.',
  youFind: 'In the drill you find:',
  youRead: 'In the drill you read:',
  theyTell: 'In the drill they tell you:',
  theyCount: 'In the drill they counted:',
  lookAtPicture: 'Look at the picture of the drill.',
  theTie: 'In the drill:',
  fatal: 'The drill stops here. At a real machine somebody would be hurt.',
  over: 'The drill is over. Look at the debrief.',
} as const;
