import { topic } from '../phrase-rule.ts';

/** Opens the count of bales, in every state of a job. */
export const countOpening = topic({
  'count.open': {
    risk: 'navigation',
    forms: ['count the bales with me', 'start the bale count'],
    readBack: 'Counting bales.',
  },
});

/** Baling with a counter: two or three words a bale, understood only while bales are counted. */
export const counting = topic({
  'count.good': { risk: 'answer', forms: ['that bale was good', 'good bale'], readBack: 'Good bale.' },
  'count.missLeft': {
    risk: 'answer',
    forms: ['missed on the left', 'miss left', 'missed on the near side'],
    readBack: 'Missed on the left.',
  },
  'count.missRight': {
    risk: 'answer',
    forms: ['missed on the right', 'miss right', 'missed on the off side'],
    readBack: 'Missed on the right.',
  },
  'count.missBoth': {
    risk: 'answer',
    forms: ['missed on both the sides', 'miss both'],
    readBack: 'Missed on both sides.',
  },
  'count.newBallLeft': {
    risk: 'answer',
    forms: ['new ball on the left', 'new ball left', 'new ball on the near side'],
    readBack: 'New ball on the left.',
  },
  'count.newBallRight': {
    risk: 'answer',
    forms: ['new ball on the right', 'new ball right', 'new ball on the off side'],
    readBack: 'New ball on the right.',
  },
  'count.cropThin': { risk: 'answer', forms: ['the crop is getting thin'], readBack: 'Thin crop.' },
  'count.cropUsual': { risk: 'answer', forms: ['the crop is as usual'], readBack: 'Usual crop.' },
  'count.cropDense': {
    risk: 'answer',
    forms: ['the crop is heavy or green', 'heavy crop'],
    readBack: 'Heavy or green crop.',
  },
  'count.densityLooser': {
    risk: 'answer',
    forms: ['the bales are set looser'],
    readBack: 'Looser bales.',
  },
  'count.densityUsual': {
    risk: 'answer',
    forms: ['bale density back to usual'],
    readBack: 'Usual bale density.',
  },
  'count.densityTighter': {
    risk: 'answer',
    forms: ['the bales are set tighter'],
    readBack: 'Tighter bales.',
  },
  'count.speedSlow': {
    risk: 'answer',
    forms: ['running the shaft slower'],
    readBack: 'Slower power take-off.',
  },
  'count.speedFull': {
    risk: 'answer',
    forms: ['running at full shaft speed'],
    readBack: 'Full power take-off speed.',
  },
  'count.takeBack': {
    risk: 'answer',
    forms: ['take the last one back', 'take that back'],
    readBack: 'Taken back.',
  },
  'count.pattern': {
    risk: 'navigation',
    forms: ['what pattern do you see', 'do you see a pattern'],
    readBack: '',
  },
  'count.enough': {
    risk: 'navigation',
    forms: ['that is enough counting', 'enough counting'],
    readBack: 'The count is kept.',
  },
});

/** Uses what was counted in the proof of a repair; understood only where it is offered. */
export const countUsing = topic({
  'count.asBefore': {
    risk: 'answer',
    forms: ['take the count from before'],
    readBack: 'The count from before.',
  },
  'count.asTies': {
    risk: 'answer',
    forms: ['use the bales since the repair'],
    readBack: 'The bales since the repair.',
  },
});
