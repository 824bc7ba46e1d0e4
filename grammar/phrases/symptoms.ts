import { topic } from '../phrase-rule.ts';

/** The first words of a job: what the knotter does, as an operator would put it. */
export const symptoms = topic({
  'symptom.heldStrandLost': {
    risk: 'answer',
    forms: [
      '{subject} keeps letting go',
      '{subject} lets go of the string',
      'the string pulls out of the disc',
      'the string slips out before it ties',
      "{subject} won't hold the string",
      'it misses when the bales are tight',
      'the held end is chewed off',
    ],
    readBack: 'It lets go of the held strand.',
  },
  'symptom.needleStrandMissed': {
    risk: 'answer',
    forms: [
      '{subject} never picks up the second strand',
      'the needle string gets left out of the knot',
      'the new string runs back down untied',
      'after a miss the next bale goes too',
      'the finger leaves the string behind',
      'only the held side gets tied in',
    ],
    readBack: 'It misses the needle strand.',
  },
  'symptom.noKnotEitherEnd': {
    risk: 'answer',
    forms: [
      'two cut ends and no knot at all',
      '{subject} cuts the string but never ties',
      'both ends come out bare',
      'it chops the twine and leaves it lying',
      'the billhook turns and makes nothing',
    ],
    readBack: 'It cuts both strands and ties neither.',
  },
  'symptom.knotHangsOn': {
    risk: 'answer',
    forms: [
      'the loop stays stuck on the billhook',
      '{subject} hangs on to the knot',
      'knots pile up on the billhook',
      "the knot is made but won't come away",
      'the twine tears as the bale moves off',
      'i pick every knot off by hand',
    ],
    readBack: 'The knot stays on the billhook.',
  },
  'symptom.knotFailsLater': {
    risk: 'answer',
    forms: [
      'the bales come apart after they drop',
      'it ties well but the strings break later',
      'knots come loose on the wagon',
      'strings burst in the stack',
      'the bales fall open when we lift them',
      'the string gives way beside the knot',
    ],
    readBack: 'It ties, and the string fails later.',
  },
  'symptom.twineFeedLost': {
    risk: 'answer',
    forms: [
      'the needle keeps running out of twine',
      'the twine breaks before the needle',
      'it tangles up in the twine box',
      '{subject} loses twine at a new ball',
      'the needle keeps coming unthreaded',
      'the splice catches on its way through',
    ],
    readBack: 'The twine gets lost before the needle.',
  },
  'symptom.cyclesWrong': {
    risk: 'answer',
    forms: [
      'it should trip and nothing happens',
      'the bales are all different lengths',
      'it trips again on every stroke',
      'the bales run far too long',
      'i always have to trip the arm myself',
      'the needles never come up',
    ],
    readBack: 'The knotters do not trip as they should.',
  },
  'symptom.needlesStruck': {
    risk: 'answer',
    forms: [
      'a needle has been struck and bent',
      'the plunger has hit the needles',
      'the shear bolt broke again',
      'there is a loud bang when it ties',
      'the needles are stuck part way up',
    ],
    readBack: 'The needles were hit, or the shear bolt broke.',
  },
  'symptom.bothSidesNowAndThen': {
    risk: 'answer',
    forms: [
      'now and then it misses on either side',
      'both sides miss one every so often',
      'it ties standing still but not in the field',
      'first one side misses and then the other',
      'damp mornings make it miss',
    ],
    readBack: 'Both sides miss now and then.',
  },
});
