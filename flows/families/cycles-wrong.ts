import { defineFamily } from './family.ts';

/**
 * The knotters do not cycle when they should, cycle again and again, or the bales come out in all lengths. Both
 * strings are affected together. A length that varies by up to a flake is normal, since a trip can only happen on
 * a stroke.
 *
 * Priors, likelihoods and minutes are expert estimates. Settings marked "from memory" are typical only; the
 * operator's manual of the machine wins. The trip arm is never lifted by hand outside the lockout: it can start
 * the cycle.
 */
export const cyclesWrong = defineFamily({
  id: 'cyclesWrong',
  name: 'the knotters not tripping as they should',
  symptom: 'symptom.cyclesWrong',
  causes: {
    tripArmWorn: {
      name: 'the trip arm is bent, dry or weak in its spring',
      prior: 0.24,
      remedy: {
        reach: 'lockout',
        steps: [
          'Free the pivot of the trip arm, and oil it.',
          'Replace the spring if it is stretched, and the arm if it is bent.',
          'Lift the arm and let it go. It should drop right down.',
        ],
        minutes: 20,
        parts: ['trip arm spring'],
      },
    },
    pawlWorn: {
      name: 'the clutch pawl is worn round or its spring is broken',
      prior: 0.2,
      remedy: {
        reach: 'lockout',
        steps: [
          'Fit a new pawl and a new spring together.',
          'See that the pawl drops in square, over its full face.',
        ],
        minutes: 40,
        parts: ['clutch pawl', 'pawl spring'],
      },
    },
    starWheelSlips: {
      name: 'the star wheel slips, clogged or worn',
      prior: 0.18,
      remedy: {
        reach: 'lockout',
        steps: [
          'Clear the hay from the star wheel. Turn it by hand. It should run freely.',
          'Replace it if its teeth are bent or worn down.',
        ],
        minutes: 15,
        parts: ['star wheel, if worn'],
      },
    },
    collarSlipped: {
      name: 'the bale length collar or its spline has slipped',
      prior: 0.13,
      remedy: {
        reach: 'lockout',
        steps: [
          'Set the collar to the length you want, and tighten it.',
          'Replace it if its splines or its bolt are worn.',
          'Paint a mark across it, so that you see if it slips again.',
        ],
        minutes: 12,
        parts: ['length collar, if worn'],
      },
    },
    brakeWrong: {
      name: 'the knotter brake is too loose or too tight',
      prior: 0.1,
      remedy: {
        reach: 'lockout',
        steps: [
          'Clean oil from the brake. Fit a new lining if it is worn thin.',
          'Set the brake by the manual of your machine. It alone must keep the needles home.',
        ],
        minutes: 30,
        parts: ['brake lining'],
      },
    },
    pawlNotThrownOut: {
      name: 'the clutch pawl is not thrown out after one turn',
      prior: 0.07,
      remedy: {
        reach: 'lockout',
        steps: [
          'Clean the latch face and the pawl roller. Replace what is worn.',
          'See that the trip arm sets itself back before the turn ends.',
        ],
        minutes: 35,
        parts: ['pawl roller', 'latch'],
      },
    },
    balesLoose: {
      name: 'the bales are too loose to turn the star wheel',
      prior: 0.05,
      remedy: {
        reach: 'safeStop',
        steps: ['Bale a step denser, the same on both sides. Stay outside the guards.'],
        minutes: 3,
      },
    },
    driveLost: {
      name: 'the knotter drive is lost, by a chain, a bolt or a key',
      prior: 0.03,
      remedy: {
        reach: 'lockout',
        steps: [
          'Fit the chain, the bolt or the key again, by the manual of your machine.',
          'Find out why it went. If the needles are out of time with the plunger, stop and call the dealer.',
        ],
        minutes: 40,
        parts: ['shear bolt or key'],
        refer: 'Timing the knotter drive to the plunger is work for the dealer or a licensed technician.',
      },
    },
  },
  checks: {
    starWheel: {
      reach: 'safeStop',
      look: 'starWheel',
      ask: 'Shine a light on the star wheel. Packed full, teeth worn or bent, or clean all the way across?',
      why: 'A star wheel that slips measures nothing, so the knotters are never told to tie.',
      minutes: 1,
      answers: [
        { meaning: 'finding.packed', given: { starWheelSlips: 0.5 }, otherwise: 0.05, pointsAtFault: true },
        {
          meaning: 'finding.teethWorn',
          given: { starWheelSlips: 0.38 },
          otherwise: 0.03,
          pointsAtFault: true,
        },
        { meaning: 'finding.clean', given: { starWheelSlips: 0.12 }, otherwise: 0.92, pointsAtFault: false },
      ],
    },
    tripArm: {
      reach: 'safeStop',
      look: 'tripArm',
      ask: 'Look at the trip arm, its pivot and its spring. Bent or stiff with rust, or sound all over?',
      why: 'An arm that hangs does not let the clutch go.',
      minutes: 2,
      answers: [
        {
          meaning: 'finding.stiffWithRust',
          given: { tripArmWorn: 0.85 },
          otherwise: 0.06,
          pointsAtFault: true,
        },
        { meaning: 'finding.sound', given: { tripArmWorn: 0.15 }, otherwise: 0.94, pointsAtFault: false },
      ],
    },
    collar: {
      reach: 'safeStop',
      look: 'tripArm',
      ask: 'Look at the bale length collar. Has it slipped along, or do the marks still line up?',
      why: 'A collar that slips lets every bale grow longer.',
      minutes: 1.5,
      answers: [
        {
          meaning: 'finding.collarSlipped',
          given: { collarSlipped: 0.88 },
          otherwise: 0.05,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.marksLineUp',
          given: { collarSlipped: 0.12 },
          otherwise: 0.95,
          pointsAtFault: false,
        },
      ],
    },
    driveLook: {
      reach: 'safeStop',
      look: 'driveChain',
      ask: 'Look at the knotter drive. Is the chain off or a bolt gone, or does it look sound all over?',
      why: 'Without its drive the knotter cannot turn, whatever the trip does.',
      minutes: 1,
      answers: [
        { meaning: 'finding.driveBroken', given: { driveLost: 0.93 }, otherwise: 0.02, pointsAtFault: true },
        { meaning: 'finding.sound', given: { driveLost: 0.07 }, otherwise: 0.98, pointsAtFault: false },
      ],
    },
    baleSlack: {
      reach: 'safeStop',
      look: 'bale',
      ask: 'On a bale on the ground, slide a hand under the string. Is it loose around the bale, or tight on the hay?',
      why: 'A loose bale slides past the star wheel without turning it.',
      minutes: 1,
      answers: [
        { meaning: 'finding.stringLoose', given: { balesLoose: 0.9 }, otherwise: 0.1, pointsAtFault: true },
        { meaning: 'finding.stringSnug', given: { balesLoose: 0.1 }, otherwise: 0.9, pointsAtFault: false },
      ],
    },
    pawlLook: {
      reach: 'lockout',
      look: 'pawl',
      prepare: ['Open the clutch cover. Try the pawl by hand, in and out.'],
      ask: 'Is the nose worn round, does the pawl stick, or is it square and free?',
      why: 'A round pawl slips out, and a pawl that sticks ties over and over.',
      minutes: 4,
      answers: [
        {
          meaning: 'finding.pawlRounded',
          given: { pawlWorn: 0.9, pawlNotThrownOut: 0.08 },
          otherwise: 0.05,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.pawlSticks',
          given: { pawlWorn: 0.05, pawlNotThrownOut: 0.84 },
          otherwise: 0.04,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.pawlSquare',
          given: { pawlWorn: 0.05, pawlNotThrownOut: 0.08 },
          otherwise: 0.91,
          pointsAtFault: false,
        },
      ],
    },
    brake: {
      reach: 'lockout',
      look: 'knotterBrake',
      prepare: ['Leave the needles strapped. Open the brake cover, and wipe the lining.'],
      ask: 'Is the lining thin or oily, or dry with plenty of it left?',
      why: 'The brake alone keeps the needles home between knots.',
      minutes: 4,
      answers: [
        { meaning: 'finding.liningWorn', given: { brakeWrong: 0.85 }, otherwise: 0.06, pointsAtFault: true },
        { meaning: 'finding.liningGood', given: { brakeWrong: 0.15 }, otherwise: 0.94, pointsAtFault: false },
      ],
    },
  },
});
