import { defineFamily } from './family.ts';
import { TONGUE_PULL } from './pulls.ts';

/**
 * A knot is made and the machine carries on, but the string fails later: it breaks at the knot, the knot slides
 * undone, or the string parts somewhere along the bale.
 *
 * Priors, likelihoods and minutes are expert estimates. Settings marked "from memory" are typical only; the
 * operator's manual of the machine wins.
 */
export const knotFailsLater = defineFamily({
  id: 'knotFailsLater',
  name: 'a knot that is made but fails later',
  symptom: 'symptom.knotFailsLater',
  causes: {
    balesTooDense: {
      name: 'the bales are too dense for this twine',
      prior: 0.22,
      remedy: {
        reach: 'safeStop',
        steps: [
          'Ease the bale density one step, the same on both sides. Stay outside the guards.',
          'Or run a stronger twine, if the manual of your machine lists one.',
        ],
        minutes: 3,
      },
    },
    twineWeak: {
      name: 'the twine is weak, old or below its label',
      prior: 0.2,
      remedy: {
        reach: 'lockout',
        steps: [
          'Change both balls to new twine from a dry store, and thread it up.',
          'Keep a piece of the old twine and its label. The supplier will want them.',
        ],
        minutes: 12,
        parts: ['baler twine'],
      },
    },
    sharpEdge: {
      name: 'a sharp edge nicks the twine on its way',
      prior: 0.15,
      remedy: {
        reach: 'lockout',
        steps: [
          'Stone the sharp edge down and polish it. Replace the part if it is pitted.',
          'Draw the cotton over it again. It should slide freely.',
        ],
        minutes: 15,
      },
    },
    tongueLoose: {
      name: 'the billhook tongue spring is set too loose, so the knot is loose',
      prior: 0.14,
      remedy: {
        reach: 'lockout',
        steps: [
          'Tighten the tongue spring one quarter of a turn, on this knotter only. Count the turns.',
          'Lift the tongue with the scale again, and compare it with the other knotter.',
        ],
        minutes: 6,
      },
    },
    tensionUneven: {
      name: 'one string is tighter and carries the whole bale',
      prior: 0.08,
      remedy: {
        reach: 'lockout',
        steps: [
          'Clean the tensioner plates on both sides.',
          'Set both strings to the same pull, by the manual of your machine.',
        ],
        minutes: 8,
      },
    },
    tailsShort: {
      name: 'the knot tails are cut too short',
      prior: 0.09,
      remedy: {
        reach: 'lockout',
        steps: [
          'Tighten the holder bolt one eighth of a turn, on this knotter only. Count the turns.',
          'Set the knife and its guide by the manual of your machine.',
        ],
        minutes: 10,
      },
    },
    wiperHard: {
      name: 'the wiper presses too hard and scuffs the twine',
      prior: 0.04,
      remedy: {
        reach: 'lockout',
        steps: ['Ease the wiper by the manual of your machine, until it only rubs lightly.'],
        minutes: 12,
      },
    },
    handlingCuts: {
      name: 'the chute, the thrower or the handling cuts the strings',
      prior: 0.08,
      remedy: {
        reach: 'lockout',
        steps: [
          'Find the edge that stands where the string is cut. Dress it smooth.',
          'Set the chute so that the bale does not drag over that edge.',
        ],
        minutes: 15,
      },
    },
  },
  checks: {
    twineSnap: {
      reach: 'safeStop',
      look: 'failedString',
      ask: 'Snap a piece of this twine by hand, beside a new one. Does this one snap easier, or are both as hard?',
      why: 'Sun and damp rot twine, and your hands can feel it.',
      minutes: 1,
      answers: [
        { meaning: 'finding.twineWeaker', given: { twineWeak: 0.88 }, otherwise: 0.05, pointsAtFault: true },
        { meaning: 'finding.twineStrong', given: { twineWeak: 0.12 }, otherwise: 0.95, pointsAtFault: false },
      ],
    },
    density: {
      reach: 'safeStop',
      look: 'bale',
      ask: 'Since it last held well, did the bales get heavier, or stay about the same?',
      why: 'A denser bale can ask more than the knot can hold.',
      minutes: 1,
      answers: [
        {
          meaning: 'finding.balesHeavier',
          given: { balesTooDense: 0.88 },
          otherwise: 0.12,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.balesSame',
          given: { balesTooDense: 0.12 },
          otherwise: 0.88,
          pointsAtFault: false,
        },
      ],
    },
    breakPlace: {
      reach: 'safeStop',
      look: 'failedString',
      ask: 'Where did the string fail? Right at the knot, slid undone, always in the same place, or anywhere?',
      why: 'Where it parts tells the knot, the twine and the handling from one another.',
      minutes: 1,
      answers: [
        {
          meaning: 'finding.brokeAtKnot',
          given: {
            balesTooDense: 0.55,
            twineWeak: 0.4,
            sharpEdge: 0.45,
            tongueLoose: 0.08,
            tensionUneven: 0.5,
            tailsShort: 0.07,
            wiperHard: 0.6,
            handlingCuts: 0.04,
          },
          otherwise: 0.3,
          pointsAtFault: false,
        },
        {
          meaning: 'finding.pulledApart',
          given: {
            balesTooDense: 0.15,
            twineWeak: 0.05,
            sharpEdge: 0.05,
            tongueLoose: 0.85,
            tensionUneven: 0.15,
            tailsShort: 0.87,
            wiperHard: 0.05,
            handlingCuts: 0.03,
          },
          otherwise: 0.2,
          pointsAtFault: false,
        },
        {
          meaning: 'finding.cutInOnePlace',
          given: {
            balesTooDense: 0.05,
            twineWeak: 0.05,
            sharpEdge: 0.25,
            tongueLoose: 0.03,
            tensionUneven: 0.05,
            tailsShort: 0.03,
            wiperHard: 0.15,
            handlingCuts: 0.8,
          },
          otherwise: 0.15,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.brokeAnywhere',
          given: {
            balesTooDense: 0.25,
            twineWeak: 0.5,
            sharpEdge: 0.25,
            tongueLoose: 0.04,
            tensionUneven: 0.3,
            tailsShort: 0.03,
            wiperHard: 0.2,
            handlingCuts: 0.13,
          },
          otherwise: 0.35,
          pointsAtFault: false,
        },
      ],
    },
    tails: {
      reach: 'safeStop',
      look: 'failedString',
      ask: 'Look at the tails of five knots. How long is the shortest? Or say, far too short, or good and long.',
      why: 'A knot with short tails slides undone.',
      minutes: 1,
      measure: {
        dimension: 'length',
        plausible: { low: { amount: 0, unit: 'inch' }, high: { amount: 6, unit: 'inch' } },
        bands: [
          { below: { amount: 0.375, unit: 'inch' }, means: 'finding.tailsShort' },
          { means: 'finding.tailsLong' },
        ],
        provenance: 'from memory',
        typically: 'Typical is a half to one inch.',
      },
      answers: [
        {
          meaning: 'finding.tailsShort',
          given: { tailsShort: 0.92, tongueLoose: 0.12 },
          otherwise: 0.06,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.tailsLong',
          given: { tailsShort: 0.08, tongueLoose: 0.88 },
          otherwise: 0.94,
          pointsAtFault: false,
        },
      ],
    },
    stringBalance: {
      reach: 'safeStop',
      look: 'bale',
      ask: 'On a bale on the ground, slide a hand under each string. Is one a lot looser, or do they feel equal?',
      why: 'When one string is loose the other carries the whole bale.',
      minutes: 1,
      answers: [
        {
          meaning: 'finding.oneSideLooser',
          given: { tensionUneven: 0.9 },
          otherwise: 0.08,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.sidesAlike',
          given: { tensionUneven: 0.1 },
          otherwise: 0.92,
          pointsAtFault: false,
        },
      ],
    },
    wiperGap: {
      reach: 'lockout',
      look: 'wiper',
      prepare: ['Slide a strip of paper between the wiper and the billhook, along the whole sweep.'],
      ask: 'Does the wiper never touch, rub lightly all the way, or scrape hard?',
      why: 'A wiper that scrapes hard stretches and scuffs the twine.',
      minutes: 3,
      answers: [
        { meaning: 'finding.wiperGouges', given: { wiperHard: 0.9 }, otherwise: 0.05, pointsAtFault: true },
        { meaning: 'finding.wiperRubs', given: { wiperHard: 0.08 }, otherwise: 0.89, pointsAtFault: false },
        { meaning: 'finding.wiperClear', given: { wiperHard: 0.02 }, otherwise: 0.06, pointsAtFault: false },
      ],
    },
    edgeDrag: {
      reach: 'lockout',
      look: 'billhook',
      prepare: [
        'Draw a wad of cotton over billhook, wiper, disc and guides, all along the way of the twine.',
      ],
      ask: 'Does the cotton snag and catch, or does it slide along freely?',
      why: 'An edge that snags cotton nicks twine.',
      minutes: 4,
      answers: [
        { meaning: 'finding.snags', given: { sharpEdge: 0.9 }, otherwise: 0.07, pointsAtFault: true },
        { meaning: 'finding.slidesFree', given: { sharpEdge: 0.1 }, otherwise: 0.93, pointsAtFault: false },
      ],
    },
    tonguePull: {
      ...TONGUE_PULL,
      why: 'A loose tongue makes a loose knot.',
      answers: [
        { meaning: 'finding.liftsEasily', given: { tongueLoose: 0.9 }, otherwise: 0.06, pointsAtFault: true },
        { meaning: 'finding.liftsEven', given: { tongueLoose: 0.08 }, otherwise: 0.88, pointsAtFault: false },
        { meaning: 'finding.liftsHard', given: { tongueLoose: 0.02 }, otherwise: 0.06, pointsAtFault: false },
      ],
    },
  },
});
