import { defineFamily } from './family.ts';

/**
 * Both knotters miss now and then, with mixed pictures, and the rate follows weather, crop or speed. It often
 * passes a dry hand turn and fails in hay: then look at what the hay and the twine do, and at wear that adds up.
 *
 * Priors, likelihoods and minutes are expert estimates. Settings marked "from memory" are typical only; the
 * operator's manual of the machine wins.
 */
export const bothSidesNowAndThen = defineFamily({
  id: 'bothSidesNowAndThen',
  name: 'both knotters missing now and then',
  symptom: 'symptom.bothSidesNowAndThen',
  causes: {
    dirtyAndDry: {
      name: 'the knotters are dirty and dry all over',
      prior: 0.28,
      remedy: {
        reach: 'lockout',
        steps: [
          'Blow and brush both knotters clean, from the top down. Wear eye protection.',
          'Oil and grease every point the manual of your machine lists.',
        ],
        minutes: 25,
      },
    },
    cropUneven: {
      name: 'the windrow is uneven, green or damp',
      prior: 0.16,
      remedy: {
        reach: 'safeStop',
        steps: [
          'Rake the rows even, or wait until the dew is off.',
          'Drive so that each bale takes the same number of strokes.',
        ],
        minutes: 10,
      },
    },
    speedWrong: {
      name: 'the power take-off runs at the wrong speed',
      prior: 0.12,
      remedy: {
        reach: 'safeStop',
        steps: ['Keep the power take-off at its rated speed, all day. Drive slower in thick hay instead.'],
        minutes: 2,
      },
    },
    shaftPlay: {
      name: 'the knotter shaft or its bushings are loose',
      prior: 0.14,
      remedy: {
        reach: 'lockout',
        steps: [
          'Tighten the frame bolts.',
          'Shim or bush the shaft by the manual of your machine.',
          'Pry the shaft endwise again, and measure the play.',
        ],
        minutes: 60,
        parts: ['knotter shaft bushings', 'shims'],
      },
    },
    twineChanged: {
      name: 'the twine was changed for another sort or batch',
      prior: 0.12,
      remedy: {
        reach: 'lockout',
        steps: [
          'Change back to the old twine on both sides, and thread it up.',
          'Or set tensioners and holders for the new twine, by the manual of your machine.',
        ],
        minutes: 15,
        parts: ['baler twine'],
      },
    },
    plungerKnivesDull: {
      name: 'the plunger knives are dull and leave ragged hay',
      prior: 0.08,
      remedy: {
        reach: 'lockout',
        steps: [
          'Leave the chamber empty, and the plunger blocked.',
          'Sharpen or change both knives, and set the gap by the manual of your machine.',
        ],
        minutes: 60,
        parts: ['plunger knife', 'stationary knife'],
      },
    },
    holdersAndDensity: {
      name: 'density and both holders do not suit each other',
      prior: 0.06,
      remedy: {
        reach: 'lockout',
        steps: [
          'Set both holders to the same pull, by the manual of your machine.',
          'Then set the density, and change it only a step at a time.',
        ],
        minutes: 15,
      },
    },
    wearAddsUp: {
      name: 'many small wears that add up',
      prior: 0.04,
      remedy: {
        reach: 'lockout',
        steps: ['Plan to rebuild both knotters together, with the measurements you took.'],
        minutes: 10,
        refer: 'Rebuilding both knotters is work for the dealer or a licensed technician.',
      },
    },
  },
  checks: {
    twineLabels: {
      reach: 'safeStop',
      look: 'twineBox',
      ask: 'Read the labels on both sides. Is it a different sort of twine, or the same as you always use?',
      why: 'Another twine needs other settings, and it changes both sides at once.',
      minutes: 0.5,
      answers: [
        {
          meaning: 'finding.twineDifferent',
          given: { twineChanged: 0.93 },
          otherwise: 0.06,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.twineUsual',
          given: { twineChanged: 0.07 },
          otherwise: 0.94,
          pointsAtFault: false,
        },
      ],
    },
    stackLook: {
      reach: 'safeStop',
      look: 'knotterFrame',
      ask: 'Shine a light over both knotters. Packed with chaff or rust, or clean and bright?',
      why: 'Dirt is the commonest cause when both sides miss.',
      minutes: 1,
      answers: [
        {
          meaning: 'finding.packed',
          given: { dirtyAndDry: 0.92, wearAddsUp: 0.2 },
          otherwise: 0.1,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.clean',
          given: { dirtyAndDry: 0.08, wearAddsUp: 0.8 },
          otherwise: 0.9,
          pointsAtFault: false,
        },
      ],
    },
    windrow: {
      reach: 'safeStop',
      look: 'windrow',
      ask: 'Walk along the row. Lumpy or damp, or dry and even all along?',
      why: 'Lumps and damp change the pull on every knot.',
      minutes: 1,
      answers: [
        {
          meaning: 'finding.windrowUneven',
          given: { cropUneven: 0.9 },
          otherwise: 0.12,
          pointsAtFault: true,
        },
        { meaning: 'finding.windrowEven', given: { cropUneven: 0.1 }, otherwise: 0.88, pointsAtFault: false },
      ],
    },
    speed: {
      reach: 'safeStop',
      look: 'tractorSeat',
      ask: 'Think back to the seat. Did the power take-off speed wander up and down, or hold steady all day?',
      why: 'Every part of a knot is timed by that speed.',
      minutes: 1,
      answers: [
        {
          meaning: 'finding.speedWanders',
          given: { speedWrong: 0.85 },
          otherwise: 0.08,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.speedSteady',
          given: { speedWrong: 0.15 },
          otherwise: 0.92,
          pointsAtFault: false,
        },
      ],
    },
    baleFace: {
      reach: 'safeStop',
      look: 'bale',
      ask: 'Look at the cut side of a bale. Ragged with stems folded over, or cut off flat?',
      why: 'Dull plunger knives leave ends that push the strands about.',
      minutes: 1,
      answers: [
        {
          meaning: 'finding.faceRagged',
          given: { plungerKnivesDull: 0.9 },
          otherwise: 0.07,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.faceCut',
          given: { plungerKnivesDull: 0.1 },
          otherwise: 0.93,
          pointsAtFault: false,
        },
      ],
    },
    shaftPlay: {
      reach: 'lockout',
      look: 'knotterFrame',
      prepare: ['Pry the knotter shaft endwise with a short hand bar, and measure how far it gives.'],
      ask: 'How much play, in thou? Or say, loose and wobbles, or firm and tight.',
      why: 'A shaft that floats lets every part meet at another place each time.',
      minutes: 6,
      measure: {
        dimension: 'length',
        plausible: { low: { amount: 0, unit: 'thou' }, high: { amount: 1000, unit: 'thou' } },
        bands: [{ below: { amount: 30, unit: 'thou' }, means: 'finding.firm' }, { means: 'finding.wobbles' }],
        provenance: 'from memory',
        typically: 'Typical is five to thirty thou.',
      },
      answers: [
        {
          meaning: 'finding.wobbles',
          given: { shaftPlay: 0.9, wearAddsUp: 0.35 },
          otherwise: 0.05,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.firm',
          given: { shaftPlay: 0.1, wearAddsUp: 0.65 },
          otherwise: 0.95,
          pointsAtFault: false,
        },
      ],
    },
    bothHolders: {
      reach: 'lockout',
      look: 'twineHolder',
      prepare: [
        'Hook the scale on each held strand in turn. Pull along its working line until it first slips.',
      ],
      ask: 'Tell me the weaker pull in pounds. Or say, slips too easily, a good firm hold, or far too tight.',
      why: 'Holders that are both wrong miss on both sides.',
      minutes: 6,
      measure: {
        dimension: 'force',
        plausible: { low: { amount: 1, unit: 'poundForce' }, high: { amount: 200, unit: 'poundForce' } },
        bands: [
          { below: { amount: 40, unit: 'poundForce' }, means: 'finding.slipsEasily' },
          { below: { amount: 60, unit: 'poundForce' }, means: 'finding.holdsWell' },
          { means: 'finding.holdsTooTight' },
        ],
        provenance: 'from memory',
        typically: 'Typical is forty to sixty pounds.',
      },
      answers: [
        {
          meaning: 'finding.slipsEasily',
          given: { holdersAndDensity: 0.62, wearAddsUp: 0.3 },
          otherwise: 0.06,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.holdsWell',
          given: { holdersAndDensity: 0.1, wearAddsUp: 0.65 },
          otherwise: 0.9,
          pointsAtFault: false,
        },
        {
          meaning: 'finding.holdsTooTight',
          given: { holdersAndDensity: 0.28, wearAddsUp: 0.05 },
          otherwise: 0.04,
          pointsAtFault: true,
        },
      ],
    },
    fullMeasure: {
      reach: 'lockout',
      look: 'camGear',
      prepare: [
        'Measure disc, holder, tongue, finger, cam track and rollers, and compare each with the manual.',
      ],
      ask: 'Are several close to the limit, or are they all well inside it?',
      why: 'Small wears, each inside its limit, add up to a miss.',
      minutes: 10,
      answers: [
        { meaning: 'finding.nearTheLimit', given: { wearAddsUp: 0.9 }, otherwise: 0.08, pointsAtFault: true },
        { meaning: 'finding.wellInside', given: { wearAddsUp: 0.1 }, otherwise: 0.92, pointsAtFault: false },
      ],
    },
  },
});
