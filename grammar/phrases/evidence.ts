import { topic } from '../phrase-rule.ts';

/** What the failed string, the bales and the last half hour tell before anybody touches the machine. */
export const evidence = topic({
  'knot.frontEnd': {
    risk: 'answer',
    forms: ['only the front end has a knot', 'knot on the front end', 'knot on the needle end'],
    readBack: 'Knot on the front end only.',
  },
  'knot.topEnd': {
    risk: 'answer',
    forms: ['the knot lies along the top of the bale', 'it lies along the top', 'the held side is tied'],
    readBack: 'Knot on the top end only.',
  },
  'knot.neither': {
    risk: 'answer',
    forms: ["there's no knot on either end", 'neither end is tied', "there's no knot anywhere"],
    readBack: 'No knot on either end.',
  },
  'knot.onBillhook': {
    risk: 'answer',
    forms: ["it's still hanging on the billhook", 'the knot hangs on the billhook'],
    readBack: 'The knot hangs on the billhook.',
  },
  'knot.made': {
    risk: 'answer',
    forms: ['it tied a knot that came undone', 'it tied and broke later', 'a knot was made'],
    readBack: 'A knot was made and failed later.',
  },
  'knot.oneStrand': {
    risk: 'answer',
    forms: ['there was only one strand', 'there is no second strand', 'the needle came up empty'],
    readBack: 'There was no second strand.',
  },
  'knot.noCycle': {
    risk: 'answer',
    forms: ['the knotter never tried to tie', 'it never tripped', 'it ties on every stroke'],
    readBack: 'The knotter did not cycle as it should.',
  },

  'end.square': {
    risk: 'answer',
    forms: ["it's cut off clean and square", "it's cut square", 'a clean square cut'],
    readBack: 'Cut square.',
  },
  'end.pinched': {
    risk: 'answer',
    forms: ["it's pinched flat like a brush", "it's pinched like a brush", "it's pinched flat"],
    readBack: 'Pinched like a brush.',
  },
  'end.torn': {
    risk: 'answer',
    forms: ["it's torn and stretched out", "it's torn and stretched", 'it looks torn'],
    readBack: 'Torn and stretched.',
  },
  'end.curled': {
    risk: 'answer',
    forms: ["it's curly with a kink in it", "it's curled and kinked", 'it has a curl in it'],
    readBack: 'Curled and kinked.',
  },

  'which.left': {
    risk: 'answer',
    forms: [
      "it's always the left hand one",
      'left hand side',
      'the left one',
      "it's always the near side one",
    ],
    readBack: 'The left one, seen from behind.',
  },
  'which.right': {
    risk: 'answer',
    forms: [
      'the right side every single time',
      'right hand side',
      'the right one',
      'the off side every single time',
    ],
    readBack: 'The right one, seen from behind.',
  },
  'which.both': {
    risk: 'answer',
    forms: ['both knotters are doing it', 'both of them together', 'both knotters'],
    readBack: 'Both knotters.',
  },
  'which.alternates': {
    risk: 'answer',
    forms: ['sometimes one and sometimes the other', 'it changes sides'],
    readBack: 'Now one, now the other.',
  },

  'when.mostBales': {
    risk: 'answer',
    forms: ['it misses on most of the bales', 'nearly every bale', 'most of the bales'],
    readBack: 'On most bales.',
  },
  'when.random': {
    risk: 'answer',
    forms: ['it comes and goes with no pattern', 'it comes and goes', 'there is no pattern'],
    readBack: 'Now and then.',
  },
  'when.ballChange': {
    risk: 'answer',
    forms: ['right after a new ball of twine', 'after i change the twine', 'after a new ball'],
    readBack: 'After a new ball.',
  },
  'when.firstBales': {
    risk: 'answer',
    forms: ['only on the first few bales', 'on the first few bales'],
    readBack: 'On the first bales.',
  },
  'when.heavyCrop': {
    risk: 'answer',
    forms: ['only in heavy or green hay', 'in the heavy hay', 'when the hay is green'],
    readBack: 'In heavy or green hay.',
  },

  'next.tiesItself': {
    risk: 'answer',
    forms: ['the next bale ties by itself', 'the next one ties fine', 'the bale after is fine'],
    readBack: 'The next bale ties by itself.',
  },
  'next.needsHelp': {
    risk: 'answer',
    forms: ['i have to thread it up again', 'i have to rethread it', 'it misses again until i clean it'],
    readBack: 'It needs threading or cleaning.',
  },
  'next.never': {
    risk: 'answer',
    forms: ['it never ties at all', 'it never ties any more'],
    readBack: 'It never ties.',
  },

  'needles.quiet': {
    risk: 'answer',
    forms: ['nothing like that has happened', 'nothing like that', 'none of those'],
    readBack: 'No bang, no broken bolt, no bent needle.',
  },
  'needles.trouble': {
    risk: 'answer',
    forms: ['there was a bang or a broken bolt', 'the shear bolt is broken', 'a needle looks bent'],
    readBack: 'A bang, a broken bolt or a bent needle.',
  },
});
