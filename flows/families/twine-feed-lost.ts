import { defineFamily } from './family.ts';

/**
 * The twine is lost before the knotter: there is no second strand on the bale at all, and the broken end is found
 * in the box, at the tensioner or at the needle eye. It often happens within a few bales of a ball change.
 *
 * Priors, likelihoods and minutes are expert estimates. Settings marked "from memory" are typical only; the
 * operator's manual of the machine wins. Untrimmed splices and fuzzed tensioners are common practice to look at.
 */
export const twineFeedLost = defineFamily({
  id: 'twineFeedLost',
  name: 'the twine getting lost before the knotter',
  symptom: 'symptom.twineFeedLost',
  causes: {
    spliceLumpy: {
      name: 'the splice between two balls is too big',
      prior: 0.26,
      remedy: {
        reach: 'lockout',
        steps: [
          'Cut the splice out. Tie the ends with a square knot, small enough for the tensioner.',
          'Trim the tails short. See that the balls are chained inside end to outside end.',
          'Thread the needle.',
        ],
        minutes: 6,
      },
    },
    ballRanOut: {
      name: 'a ball ran out, fell in or was fed from the wrong end',
      prior: 0.2,
      remedy: {
        reach: 'lockout',
        steps: [
          'Put in a full ball, standing up, and feed it from the inside end.',
          'Tie it on, and thread the needle.',
        ],
        minutes: 8,
        parts: ['baler twine'],
      },
    },
    misrouted: {
      name: 'the twine takes a wrong way through the guides',
      prior: 0.14,
      remedy: {
        reach: 'lockout',
        steps: [
          'Take the string out as far as the wrong guide, and thread it by the picture in the manual.',
          'Pull each string by hand. Both should run alike, and touch nothing else.',
        ],
        minutes: 8,
      },
    },
    tensionerPacked: {
      name: 'the tensioner is too tight or packed with fuzz',
      prior: 0.13,
      remedy: {
        reach: 'lockout',
        steps: [
          'Clean the fuzz from between the tensioner plates.',
          'Set both strings to the same pull, by the manual of your machine.',
        ],
        minutes: 8,
      },
    },
    guideGrooved: {
      name: 'a grooved guide or needle eye cuts the twine',
      prior: 0.12,
      remedy: {
        reach: 'lockout',
        steps: [
          'Replace the grooved guide, or turn it so that the twine runs on fresh metal.',
          'A grooved needle eye needs a new roller or a new needle. Never weld it up.',
        ],
        minutes: 20,
        parts: ['twine guide', 'needle eye roller'],
      },
    },
    twineUneven: {
      name: 'the twine is thick and thin, or badly wound',
      prior: 0.07,
      remedy: {
        reach: 'lockout',
        steps: ['Change the ball for a good one, and thread the needle.'],
        minutes: 8,
        parts: ['baler twine'],
      },
    },
    twineSpoilt: {
      name: 'the twine in the box is wet, rotten or chewed',
      prior: 0.04,
      remedy: {
        reach: 'lockout',
        steps: ['Throw the spoilt balls away. Put in dry ones, and thread the needle.'],
        minutes: 8,
        parts: ['baler twine'],
      },
    },
    needleCutsTwine: {
      name: 'a bent needle or a plunger edge cuts the twine',
      prior: 0.04,
      remedy: {
        reach: 'lockout',
        steps: ['Leave it locked out. Photograph the rub marks for the dealer.'],
        minutes: 5,
        refer:
          'A needle that rubs can be struck by the plunger. That is work for the dealer or a licensed technician.',
      },
    },
  },
  checks: {
    boxLook: {
      reach: 'safeStop',
      look: 'twineBox',
      ask: 'Look in the twine box. Did a ball run out or fall in, is twine wet or chewed, or are all full and standing?',
      why: 'It takes half a minute, and an empty box explains everything.',
      minutes: 0.5,
      answers: [
        {
          meaning: 'finding.ranOut',
          given: { ballRanOut: 0.94, twineSpoilt: 0.04 },
          otherwise: 0.03,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.twineSpoilt',
          given: { ballRanOut: 0.01, twineSpoilt: 0.85 },
          otherwise: 0.02,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.ballsGood',
          given: { ballRanOut: 0.05, twineSpoilt: 0.11 },
          otherwise: 0.95,
          pointsAtFault: false,
        },
      ],
    },
    splice: {
      reach: 'safeStop',
      look: 'failedString',
      ask: 'Look near the break for a splice. Is it big and lumpy, small and tidy, or is there no join near?',
      why: 'A lumpy splice catches in the tensioner or the needle eye.',
      minutes: 1,
      answers: [
        {
          meaning: 'finding.spliceLumpy',
          given: { spliceLumpy: 0.9, guideGrooved: 0.1, tensionerPacked: 0.08 },
          otherwise: 0.04,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.spliceNeat',
          given: { spliceLumpy: 0.05, guideGrooved: 0.35, tensionerPacked: 0.22 },
          otherwise: 0.13,
          pointsAtFault: false,
        },
        {
          meaning: 'finding.noSplice',
          given: { spliceLumpy: 0.05, guideGrooved: 0.55, tensionerPacked: 0.7 },
          otherwise: 0.83,
          pointsAtFault: false,
        },
      ],
    },
    route: {
      reach: 'safeStop',
      look: 'twineGuides',
      ask: 'Follow the string by eye, from ball to needle. Does it skip a guide or cross over, or go the proper way?',
      why: 'A string that rubs on a bar or on the other string breaks sooner or later.',
      minutes: 1,
      answers: [
        { meaning: 'finding.routeWrong', given: { misrouted: 0.9 }, otherwise: 0.03, pointsAtFault: true },
        { meaning: 'finding.routeRight', given: { misrouted: 0.1 }, otherwise: 0.97, pointsAtFault: false },
      ],
    },
    twineRun: {
      reach: 'safeStop',
      look: 'failedString',
      ask: 'Off the machine, run ten paces of the twine through a cloth. Thick and thin, or even along all of it?',
      why: 'Badly made twine jams where it is thick, and breaks where it is thin.',
      minutes: 1,
      answers: [
        {
          meaning: 'finding.twineUneven',
          given: { twineUneven: 0.88 },
          otherwise: 0.05,
          pointsAtFault: true,
        },
        { meaning: 'finding.twineEven', given: { twineUneven: 0.12 }, otherwise: 0.95, pointsAtFault: false },
      ],
    },
    boxDrag: {
      reach: 'lockout',
      look: 'tensioner',
      prepare: ['Pull each string steadily at its needle with the scale.'],
      ask: 'Tell me the pull in pounds. Or say, drags a lot harder, or about even.',
      why: 'A packed tensioner holds the twine until it breaks.',
      minutes: 2,
      measure: {
        dimension: 'force',
        plausible: { low: { amount: 0.5, unit: 'poundForce' }, high: { amount: 80, unit: 'poundForce' } },
        bands: [
          { below: { amount: 10, unit: 'poundForce' }, means: 'finding.dragsEven' },
          { means: 'finding.dragsHard' },
        ],
        provenance: 'from memory',
        typically: 'Typical is five to ten pounds on plastic twine, and less on sisal.',
      },
      answers: [
        {
          meaning: 'finding.dragsHard',
          given: { tensionerPacked: 0.92, misrouted: 0.4 },
          otherwise: 0.06,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.dragsEven',
          given: { tensionerPacked: 0.08, misrouted: 0.6 },
          otherwise: 0.94,
          pointsAtFault: false,
        },
      ],
    },
    guideGroove: {
      reach: 'lockout',
      look: 'twineGuides',
      prepare: ['Draw a fingernail round the needle eye, and across each guide the twine runs over.'],
      ask: 'Does your nail catch in a groove, or is it smooth?',
      why: 'A groove frays the twine, and catches every splice.',
      minutes: 3,
      answers: [
        { meaning: 'finding.grooved', given: { guideGrooved: 0.9 }, otherwise: 0.06, pointsAtFault: true },
        { meaning: 'finding.smooth', given: { guideGrooved: 0.1 }, otherwise: 0.94, pointsAtFault: false },
      ],
    },
    needleRub: {
      reach: 'lockout',
      look: 'needle',
      prepare: ['Wipe the needle clean. Look along it, and into its slot in the plunger.'],
      ask: 'Are there bright rub marks, or does it look sound all over?',
      why: 'A needle that rubs cuts its own twine, and may get struck.',
      minutes: 4,
      answers: [
        {
          meaning: 'finding.rubMarks',
          given: { needleCutsTwine: 0.88 },
          otherwise: 0.05,
          pointsAtFault: true,
        },
        { meaning: 'finding.sound', given: { needleCutsTwine: 0.12 }, otherwise: 0.95, pointsAtFault: false },
      ],
    },
  },
});
