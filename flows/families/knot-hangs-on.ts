import { defineFamily } from './family.ts';
import { TONGUE_PULL } from './pulls.ts';

/**
 * The knot is made but its loop is not wiped off the billhook: it hangs there, or the string is torn beside the
 * knot as the bale moves away. Loops left behind spoil the next cycles too, so only the first miss after cleaning
 * is clean evidence.
 *
 * Priors, likelihoods and minutes are expert estimates. Settings marked "from memory" are typical only; the
 * operator's manual of the machine wins.
 */
export const knotHangsOn = defineFamily({
  id: 'knotHangsOn',
  name: 'the knot hanging on the billhook',
  symptom: 'symptom.knotHangsOn',
  causes: {
    tongueTight: {
      name: 'the billhook tongue spring is set too tight',
      prior: 0.24,
      remedy: {
        reach: 'lockout',
        steps: [
          'Pick the old loops off the billhook first.',
          'Back the tongue spring off one quarter of a turn, on this knotter only. Count the turns.',
          'Lift the tongue with the scale again, and compare it with the other knotter.',
        ],
        minutes: 8,
      },
    },
    wiperClear: {
      name: 'the wiper does not brush the billhook',
      prior: 0.24,
      remedy: {
        reach: 'lockout',
        steps: [
          'Pick the old loops off the billhook first.',
          'Set the wiper by the manual of your machine, so that it rubs lightly along the whole billhook.',
          'Replace the arm if it is cracked or badly bent.',
        ],
        minutes: 25,
        parts: ['knife arm with wiper'],
      },
    },
    billhookRough: {
      name: 'the billhook is rusty, sticky or pitted',
      prior: 0.18,
      remedy: {
        reach: 'lockout',
        steps: [
          'Clean the billhook and the tongue. Polish them with fine cloth until they are bright.',
          'Draw a cotton thread round it. If the thread snags in a pit, fit a new billhook.',
        ],
        minutes: 12,
        parts: ['billhook, if it is pitted'],
      },
    },
    knifeDull: {
      name: 'the knife is dull and leaves a strand uncut',
      prior: 0.12,
      remedy: {
        reach: 'lockout',
        steps: [
          'Put on cut resistant gloves. The knife cuts even when nothing moves.',
          'Sharpen the knife and keep its bevel, or fit a new one.',
          'Try it on two strands of twine. One touch should cut both.',
        ],
        minutes: 15,
        parts: ['twine knife'],
      },
    },
    balesLoose: {
      name: 'the bales are too loose to pull the loop off',
      prior: 0.08,
      remedy: {
        reach: 'safeStop',
        steps: ['Bale a step denser, the same on both sides. Stay outside the guards.'],
        minutes: 3,
      },
    },
    armShort: {
      name: 'the knife arm does not travel far enough',
      prior: 0.07,
      remedy: {
        reach: 'lockout',
        steps: [
          'Look at the roller on the knife arm. Replace it if it is flat or loose.',
          'Look at the cam track. A worn or cracked cam gear is for the dealer.',
          'Set the travel by the manual of your machine.',
        ],
        minutes: 40,
        parts: ['knife arm roller'],
      },
    },
    billhookBent: {
      name: 'the tip of the billhook or tongue is bent',
      prior: 0.05,
      remedy: {
        reach: 'lockout',
        steps: [
          'Fit a new billhook. Do not heat or hammer the old one.',
          'Set the tongue spring from the start, by the manual of your machine.',
        ],
        minutes: 35,
        parts: ['billhook'],
      },
    },
    twineWrong: {
      name: 'the twine is too thick or of the wrong sort',
      prior: 0.02,
      remedy: {
        reach: 'lockout',
        steps: ['Change both balls to a twine the manual of your machine lists, and thread it up.'],
        minutes: 10,
        parts: ['baler twine'],
      },
    },
  },
  checks: {
    billhookLook: {
      reach: 'safeStop',
      look: 'billhook',
      ask: 'Shine a light on the billhook. Rusty, sticky or rough, bent out of shape, or clean and bright?',
      why: 'A loop will not slide off a rough or bent billhook. Looking takes a minute.',
      minutes: 1.5,
      answers: [
        {
          meaning: 'finding.rough',
          given: { billhookRough: 0.9, billhookBent: 0.05 },
          otherwise: 0.06,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.bent',
          given: { billhookRough: 0.02, billhookBent: 0.75 },
          otherwise: 0.02,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.clean',
          given: { billhookRough: 0.08, billhookBent: 0.2 },
          otherwise: 0.92,
          pointsAtFault: false,
        },
      ],
    },
    knifeEdge: {
      reach: 'safeStop',
      look: 'knifeArm',
      ask: 'Shine a light on the knife edge. Dull or nicked, or sharp from end to end?',
      why: 'A dull knife leaves one strand joined to the disc, and it holds the knot there.',
      minutes: 1.5,
      answers: [
        { meaning: 'finding.bladeDull', given: { knifeDull: 0.88 }, otherwise: 0.06, pointsAtFault: true },
        { meaning: 'finding.bladeKeen', given: { knifeDull: 0.12 }, otherwise: 0.94, pointsAtFault: false },
      ],
    },
    baleSlack: {
      reach: 'safeStop',
      look: 'bale',
      ask: 'On a bale on the ground, slide a hand under the string. Is it loose around the bale, or tight on the hay?',
      why: 'The moving bale has to pull the loop off. A loose bale cannot.',
      minutes: 1,
      measure: {
        dimension: 'length',
        plausible: { low: { amount: 0, unit: 'inch' }, high: { amount: 12, unit: 'inch' } },
        bands: [
          { below: { amount: 2.5, unit: 'inch' }, means: 'finding.stringSnug' },
          { means: 'finding.stringLoose' },
        ],
        provenance: 'expert estimate',
        typically: 'More than two or three inches of slack is loose.',
      },
      answers: [
        { meaning: 'finding.stringLoose', given: { balesLoose: 0.92 }, otherwise: 0.1, pointsAtFault: true },
        { meaning: 'finding.stringSnug', given: { balesLoose: 0.08 }, otherwise: 0.9, pointsAtFault: false },
      ],
    },
    twineLabel: {
      reach: 'safeStop',
      look: 'twineBox',
      ask: 'Read the label on the ball. Is it a different sort of twine, or the same as you always use?',
      why: 'A thick or hairy twine can be too much for the billhook.',
      minutes: 1,
      answers: [
        {
          meaning: 'finding.twineDifferent',
          given: { twineWrong: 0.9 },
          otherwise: 0.06,
          pointsAtFault: true,
        },
        { meaning: 'finding.twineUsual', given: { twineWrong: 0.1 }, otherwise: 0.94, pointsAtFault: false },
      ],
    },
    tonguePull: {
      ...TONGUE_PULL,
      why: 'A tongue set too tight will not let the loop slip off.',
      answers: [
        { meaning: 'finding.liftsHard', given: { tongueTight: 0.9 }, otherwise: 0.06, pointsAtFault: true },
        { meaning: 'finding.liftsEven', given: { tongueTight: 0.08 }, otherwise: 0.88, pointsAtFault: false },
        {
          meaning: 'finding.liftsEasily',
          given: { tongueTight: 0.02 },
          otherwise: 0.06,
          pointsAtFault: false,
        },
      ],
    },
    wiperGap: {
      reach: 'lockout',
      look: 'wiper',
      prepare: ['Slide a strip of paper between the wiper and the billhook, along the whole sweep.'],
      ask: 'Does the wiper never touch, rub lightly all the way, or scrape hard?',
      why: 'The wiper has to brush the loop off, along the whole billhook.',
      minutes: 4,
      measure: {
        dimension: 'length',
        plausible: { low: { amount: 0, unit: 'inch' }, high: { amount: 1, unit: 'inch' } },
        bands: [
          { below: { amount: 0.0625, unit: 'inch' }, means: 'finding.wiperRubs' },
          { means: 'finding.wiperClear' },
        ],
        provenance: 'from memory',
        typically: 'Typical is a light rub, or a gap of a thirty-second of an inch at most.',
      },
      answers: [
        {
          meaning: 'finding.wiperClear',
          given: { wiperClear: 0.9, armShort: 0.3 },
          otherwise: 0.05,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.wiperRubs',
          given: { wiperClear: 0.08, armShort: 0.66 },
          otherwise: 0.91,
          pointsAtFault: false,
        },
        {
          meaning: 'finding.wiperGouges',
          given: { wiperClear: 0.02, armShort: 0.04 },
          otherwise: 0.04,
          pointsAtFault: false,
        },
      ],
    },
    armTravel: {
      reach: 'handTurn',
      look: 'knifeArm',
      prepare: ['Pick every old loop off the billhook.'],
      ask: 'Turn the flywheel by the rim, to the end of the knife stroke. Does the arm fall short of the tip, or go well past the end?',
      why: 'An arm that falls short leaves the loop on the tip.',
      minutes: 5,
      answers: [
        {
          meaning: 'finding.armFallsShort',
          given: { armShort: 0.9, wiperClear: 0.15 },
          otherwise: 0.05,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.armGoesPast',
          given: { armShort: 0.1, wiperClear: 0.85 },
          otherwise: 0.95,
          pointsAtFault: false,
        },
      ],
    },
  },
});
