/** What a drill says beside what the job says. */
export const DRILL_LINES = {
  begins: 'This is a drill. Keep away from any real machine.',
  youFind: 'In the drill you find:',
  youRead: 'In the drill you read:',
  theyTell: 'In the drill they tell you:',
  theyCount: 'In the drill they counted:',
  lookAtPicture: 'Look at the picture of the drill.',
  theTie: 'In the drill:',
  whatDoYouSay: 'What do you say?',
  pressedWhy: 'People press. Refuse in words they can hear, and then go on.',
  fatal: 'The drill stops here. At a real machine somebody would be hurt.',
  over: 'The drill is over.',
  toDebrief: 'Carry on, and I go over it with you.',
} as const;

/** What is asked while a drill is set up aloud. */
export const SET_UP_LINES = {
  level: 'Which level? One is the easiest, four the hardest.',
  number: 'Which number? Say the one you were given, or: pick a number for me.',
  numberIs: 'The number of the drill:',
  accept: 'Is that right?',
  noSuchNumber: 'A drill has a number from zero to nine thousand nine hundred and ninety-nine.',
  why: 'The same level and number hide the same fault, so two people can be given the same drill.',
} as const;

/** What is said of a drill when it is over, one point at a time. */
export const DEBRIEF_LINES = {
  noHazard: 'Nothing came between in this drill.',
  allInTime: 'You met every hazard in time.',
  late: 'You noticed this late.',
  fatal: 'The drill stopped over this.',
  noPoints: 'A fatal error leaves no points.',
  points: 'Your points:',
  outOf: 'out of one hundred.',
  passed: 'That is a pass.',
  notPassed: 'That is not a pass yet.',
  hidden: 'This was hidden.',
  andAlso: 'And beside it:',
  toldMost: 'What told most:',
  misread: 'One answer was not what the machine showed. You said:',
  shown: 'It showed:',
  bestWay: 'By the tables it takes:',
  yourWay: 'Your way took:',
  repairedInVain: 'Repairs that were not needed:',
  lockoutLost: 'A lockout was given up with nothing to give it up for.',
  ties: 'Count every tie the proof asks for. A few good ones may be luck.',
  notEnded: 'The fault was not found, or the repair not proved.',
  rule: 'Keep this in mind.',
  sayWhatYouSee: 'Say what you see, and nothing more.',
  harder: 'Next: a level higher.',
  another: 'Next: the same level, with another number.',
  again: 'Next: this same drill once more.',
  hardest: 'Next: a different number. There is no harder level.',
  end: 'That was the debrief. Carry on to see all of it on the screen.',
} as const;
