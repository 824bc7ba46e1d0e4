import { defineFamily } from './family.ts';
import { HOLDER_PULL } from './pulls.ts';

/**
 * The held strand is pulled out of the twine disc, or sheared in it, before the knot is made: the knot sits on
 * the needle strand alone and the end along the top of the bale is bare.
 *
 * Priors, likelihoods and minutes are expert estimates. Settings marked "from memory" are typical only; the
 * operator's manual of the machine wins. That a holder spring set too strong fails as surely as one too weak,
 * and that packed debris is the commonest culprit, is common practice.
 */
export const heldStrandLost = defineFamily({
  id: 'heldStrandLost',
  name: 'the held strand getting away from the twine disc',
  symptom: 'symptom.heldStrandLost',
  causes: {
    holderLoose: {
      name: 'the twine holder spring is set too loose',
      prior: 0.24,
      remedy: {
        reach: 'lockout',
        steps: [
          'Tighten the holder bolt one eighth of a turn, on this knotter only. Count the turns.',
          'Pull the strand again with the scale, and compare it with the other knotter.',
        ],
        minutes: 6,
      },
    },
    holderSpringCracked: {
      name: 'the twine holder spring is cracked',
      prior: 0.14,
      remedy: {
        reach: 'lockout',
        steps: [
          'Fit a new holder spring. Change both knotters as a pair if you can.',
          'Set the new spring from the start, by the manual of your machine.',
          'Pull the strand with the scale, and compare it with the other knotter.',
        ],
        minutes: 20,
        parts: ['twine holder spring'],
      },
    },
    debrisPacked: {
      name: 'chaff or rust is packed between disc and holder',
      prior: 0.2,
      remedy: {
        reach: 'lockout',
        steps: [
          'Pick and brush the packed stuff out from under the holder, and from between the plates.',
          'Brush the rust off. Oil lightly, only where the manual says.',
          'Turn nothing else. See that the holder now touches the disc along its whole width.',
        ],
        minutes: 8,
      },
    },
    discWorn: {
      name: 'the twine disc or the holder is worn',
      prior: 0.14,
      remedy: {
        reach: 'lockout',
        steps: [
          'Fit a new disc and a new holder as a set.',
          'Time the disc by the manual of your machine.',
          'See that the notch carries the strand right under the holder.',
        ],
        minutes: 45,
        parts: ['twine disc', 'twine holder'],
      },
    },
    holderTight: {
      name: 'the twine holder is set too tight and nips the strand',
      prior: 0.1,
      remedy: {
        reach: 'lockout',
        steps: [
          'Back the holder bolt off one eighth of a turn, on this knotter only. Count the turns.',
          'Feel the disc edges with a cloth, not with a finger. Dress any sharp edge.',
        ],
        minutes: 8,
      },
    },
    twineDrags: {
      name: 'the twine drags too hard on its way from the box',
      prior: 0.08,
      remedy: {
        reach: 'lockout',
        steps: [
          'Follow the string from the ball to the needle. Take out any extra wrap or wrong guide.',
          'Clean the tensioner plates, and set both strings to the same pull.',
        ],
        minutes: 8,
      },
    },
    discOutOfTime: {
      name: 'the twine disc stops short of the holder',
      prior: 0.06,
      remedy: {
        reach: 'lockout',
        steps: [
          'Look for a worn worm, pin or key in the disc drive. Replace what is worn.',
          'Time the disc by the manual of your machine.',
        ],
        minutes: 40,
        parts: ['disc drive pin or key'],
        refer:
          'A disc drive that has lost its key or its teeth is work for the dealer or a licensed technician.',
      },
    },
    balesTooDense: {
      name: 'the bales are denser than the holder is set for',
      prior: 0.04,
      remedy: {
        reach: 'safeStop',
        steps: ['Ease the bale density one step, the same on both sides. Stay outside the guards.'],
        minutes: 3,
      },
    },
  },
  checks: {
    debris: {
      reach: 'safeStop',
      look: 'twineHolder',
      ask: 'Shine a light between the disc plates and under the holder. Is it packed, or clean?',
      why: 'Packed chaff is the commonest culprit, and looking takes a minute.',
      minutes: 1.5,
      answers: [
        { meaning: 'finding.packed', given: { debrisPacked: 0.92 }, otherwise: 0.06, pointsAtFault: true },
        { meaning: 'finding.clean', given: { debrisPacked: 0.08 }, otherwise: 0.94, pointsAtFault: false },
      ],
    },
    holderSpring: {
      reach: 'safeStop',
      look: 'twineHolder',
      ask: 'Shine a light on the holder spring, at the bolt hole and at the bend. Cracked, or sound?',
      why: 'A cracked spring cannot hold the strand, whatever it is set to.',
      minutes: 2,
      answers: [
        {
          meaning: 'finding.cracked',
          given: { holderSpringCracked: 0.9 },
          otherwise: 0.02,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.sound',
          given: { holderSpringCracked: 0.1 },
          otherwise: 0.98,
          pointsAtFault: false,
        },
      ],
    },
    density: {
      reach: 'safeStop',
      look: 'bale',
      ask: 'Since it last tied well, did the bales get heavier, or stay about the same?',
      why: 'A denser bale pulls harder on the held strand.',
      minutes: 1,
      answers: [
        {
          meaning: 'finding.balesHeavier',
          given: { balesTooDense: 0.95 },
          otherwise: 0.1,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.balesSame',
          given: { balesTooDense: 0.05 },
          otherwise: 0.9,
          pointsAtFault: false,
        },
      ],
    },
    holderPull: {
      ...HOLDER_PULL,
      why: 'The pull shows whether the holder is too weak or too strong.',
      answers: [
        {
          meaning: 'finding.slipsEasily',
          given: { holderLoose: 0.9, discWorn: 0.5, holderSpringCracked: 0.6, holderTight: 0.02 },
          otherwise: 0.08,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.holdsEven',
          given: { holderLoose: 0.09, discWorn: 0.48, holderSpringCracked: 0.38, holderTight: 0.08 },
          otherwise: 0.88,
          pointsAtFault: false,
        },
        {
          meaning: 'finding.holdsTooTight',
          given: { holderLoose: 0.01, discWorn: 0.02, holderSpringCracked: 0.02, holderTight: 0.9 },
          otherwise: 0.04,
          pointsAtFault: true,
        },
      ],
    },
    discWear: {
      reach: 'lockout',
      look: 'twineDisc',
      prepare: ['Draw a fingernail across the disc plates and the holder face. Look at the notch edges.'],
      ask: 'Does your nail catch in a groove, or is it smooth, with sharp notches?',
      why: 'A grooved disc lets the strand slide, even under a good spring.',
      minutes: 6,
      answers: [
        { meaning: 'finding.grooved', given: { discWorn: 0.9 }, otherwise: 0.05, pointsAtFault: true },
        { meaning: 'finding.smooth', given: { discWorn: 0.1 }, otherwise: 0.95, pointsAtFault: false },
      ],
    },
    boxDrag: {
      reach: 'lockout',
      look: 'tensioner',
      prepare: ['Pull each string steadily at its needle with the scale.'],
      ask: 'Does the bad side drag harder, or do both pull about even?',
      why: 'Twine that drags pulls the held end out of the disc.',
      minutes: 3,
      answers: [
        { meaning: 'finding.dragsHard', given: { twineDrags: 0.9 }, otherwise: 0.05, pointsAtFault: true },
        { meaning: 'finding.dragsEven', given: { twineDrags: 0.1 }, otherwise: 0.95, pointsAtFault: false },
      ],
    },
    discStop: {
      reach: 'handTurn',
      look: 'twineDisc',
      prepare: ['Paint a mark on the twine disc, and one on the frame beside it.'],
      ask: 'Turn the flywheel by the rim, through four cycles. Does the mark come right back, or does the notch stop short?',
      why: 'A notch that stops short leaves the strand outside the holder.',
      minutes: 5,
      answers: [
        {
          meaning: 'finding.stopsShort',
          given: { discOutOfTime: 0.9 },
          otherwise: 0.04,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.onTheMark',
          given: { discOutOfTime: 0.1 },
          otherwise: 0.96,
          pointsAtFault: false,
        },
      ],
    },
  },
});
