import { defineFamily } from './family.ts';

/**
 * The needle strand is not laid on the billhook, or the disc does not catch it: the knot sits on the held strand
 * alone and the needle strand comes up the front of the bale bare, often uncut. The disc ends empty, so the next
 * bale fails too, with the opposite picture: the first string of such a pair is the one to judge.
 *
 * Priors, likelihoods and minutes are expert estimates. Settings marked "from memory" are typical only; the
 * operator's manual of the machine wins. A needle is never heated or welded straight: common practice.
 */
export const needleStrandMissed = defineFamily({
  id: 'needleStrandMissed',
  name: 'the needle strand missing the billhook',
  symptom: 'symptom.needleStrandMissed',
  causes: {
    fingerShort: {
      name: 'the twine finger is bent, worn or falls short',
      prior: 0.24,
      remedy: {
        reach: 'lockout',
        steps: [
          'Compare the finger with the one on the other knotter. Replace it if it is cracked or grooved.',
          'Set the travel of the finger by the manual of your machine.',
          'Replace its roller if the roller is flat or loose.',
        ],
        minutes: 25,
        parts: ['twine finger', 'twine finger roller'],
      },
    },
    needleOffLine: {
      name: 'the needle is bent or off its line',
      prior: 0.18,
      remedy: {
        reach: 'lockout',
        steps: [
          'Replace a bent needle. Never heat it, weld it or hammer it straight.',
          'Tighten the needle on its yoke, and set it to the middle of its guide, by the manual of your machine.',
          'See that both needle tips stand at the same height.',
        ],
        minutes: 45,
        parts: ['needle', 'needle yoke bushings'],
      },
    },
    discNotchLate: {
      name: 'the twine disc notch is not open for the needle strand',
      prior: 0.13,
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
    twineSlack: {
      name: 'the needle strand hangs slack',
      prior: 0.15,
      remedy: {
        reach: 'lockout',
        steps: [
          'Clean the fuzz from between the tensioner plates.',
          'Set both strings to the same pull, by the manual of your machine.',
          'See that the strand now runs straight from the box to the needle.',
        ],
        minutes: 8,
      },
    },
    hayDogsStuck: {
      name: 'hay dogs are stuck or missing, so hay pushes the strand away',
      prior: 0.1,
      remedy: {
        reach: 'lockout',
        steps: [
          'Clear the chaff from round the hay dogs.',
          'Replace missing dogs and weak springs.',
          'Push each dog with a stick. It should spring right back.',
        ],
        minutes: 20,
        parts: ['hay dog', 'hay dog spring'],
      },
    },
    strawInThroat: {
      name: 'straw lies between the twine finger and the billhook',
      prior: 0.09,
      remedy: {
        reach: 'lockout',
        steps: [
          'Pick the straw out from between finger and billhook.',
          'Look at the chaff cleaner, if one is fitted. See that it still reaches.',
        ],
        minutes: 5,
      },
    },
    guideGrooved: {
      name: 'a twine guide or the needle eye is grooved',
      prior: 0.06,
      remedy: {
        reach: 'lockout',
        steps: [
          'Replace the grooved guide, or turn it so that the strand runs on fresh metal.',
          'Pull the strand through by hand. It should run in the middle.',
        ],
        minutes: 15,
        parts: ['twine guide'],
      },
    },
    frameLifts: {
      name: 'the knotter frame lifts away from home',
      prior: 0.05,
      remedy: {
        reach: 'lockout',
        steps: [
          'Look for cracks in the frame first. If you see one, stop here and call the dealer.',
          'Fit a new hold-down spring, or new bushings, by the manual of your machine.',
          'Pry the frame again. It should stay down.',
        ],
        minutes: 40,
        parts: ['hold-down spring', 'frame bushings'],
      },
    },
  },
  checks: {
    throat: {
      reach: 'safeStop',
      look: 'twineFinger',
      ask: 'Shine a light between the twine finger and the billhook. Straw in the way, or open and clear?',
      why: 'One straw can hold the strand away from the billhook, and looking is quick.',
      minutes: 1,
      answers: [
        {
          meaning: 'finding.strawInTheWay',
          given: { strawInThroat: 0.88 },
          otherwise: 0.06,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.pathClear',
          given: { strawInThroat: 0.12 },
          otherwise: 0.94,
          pointsAtFault: false,
        },
      ],
    },
    slack: {
      reach: 'safeStop',
      look: 'twineBox',
      ask: 'Look along the string, from the box to the needle. Does a loop hang slack, or is it straight and tight?',
      why: 'A slack strand never reaches the place where the billhook takes it.',
      minutes: 1.5,
      answers: [
        {
          meaning: 'finding.slackInString',
          given: { twineSlack: 0.9 },
          otherwise: 0.06,
          pointsAtFault: true,
        },
        { meaning: 'finding.stringTaut', given: { twineSlack: 0.1 }, otherwise: 0.94, pointsAtFault: false },
      ],
    },
    hayDogs: {
      reach: 'safeStop',
      look: 'hayDogs',
      ask: 'Shine a light on the hay dogs, from the side. Is one stuck or gone, or are they all in place and even?',
      why: 'Without the dogs the hay springs back and pushes the strand off its line.',
      minutes: 1.5,
      answers: [
        { meaning: 'finding.dogsStuck', given: { hayDogsStuck: 0.8 }, otherwise: 0.05, pointsAtFault: true },
        { meaning: 'finding.dogsEven', given: { hayDogsStuck: 0.2 }, otherwise: 0.95, pointsAtFault: false },
      ],
    },
    fingerLook: {
      reach: 'safeStop',
      look: 'twineFinger',
      ask: 'Compare the twine finger with the one on the other knotter. Bent or worn, or exactly alike?',
      why: 'A bent finger shows beside a good one, without touching either.',
      minutes: 1.5,
      answers: [
        { meaning: 'finding.bent', given: { fingerShort: 0.55 }, otherwise: 0.05, pointsAtFault: true },
        {
          meaning: 'finding.looksAlike',
          given: { fingerShort: 0.45 },
          otherwise: 0.95,
          pointsAtFault: false,
        },
      ],
    },
    slowCycle: {
      reach: 'handTurn',
      look: 'twineFinger',
      prepare: ['Thread the needle by hand, and lay the held strand in the disc, as in work.'],
      ask: 'Turn the flywheel by the rim, until the needles are right up. Do both strings lie over the billhook? Or is it the finger, the notch, or the needle?',
      why: 'One slow turn shows which of the three lets the strand down.',
      minutes: 6,
      answers: [
        {
          meaning: 'finding.fingerFallsShort',
          given: { fingerShort: 0.9, needleOffLine: 0.05, discNotchLate: 0.03 },
          otherwise: 0.03,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.notchLate',
          given: { fingerShort: 0.03, needleOffLine: 0.03, discNotchLate: 0.9 },
          otherwise: 0.03,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.needleToOneSide',
          given: { fingerShort: 0.02, needleOffLine: 0.8, discNotchLate: 0.02, frameLifts: 0.15 },
          otherwise: 0.03,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.bothAcross',
          given: { fingerShort: 0.05, needleOffLine: 0.12, discNotchLate: 0.05, frameLifts: 0.79 },
          otherwise: 0.91,
          pointsAtFault: false,
        },
      ],
    },
    needleShake: {
      reach: 'lockout',
      look: 'needle',
      prepare: ['Hold the needle near its tip, and shake it from side to side. Try the other needle too.'],
      ask: 'How far does the tip shake? Or say, loose and wobbles, or firm and tight.',
      why: 'A loose needle brings the strand up to one side.',
      minutes: 3,
      measure: {
        dimension: 'length',
        plausible: { low: { amount: 0, unit: 'inch' }, high: { amount: 3, unit: 'inch' } },
        bands: [
          { below: { amount: 0.1875, unit: 'inch' }, means: 'finding.firm' },
          { means: 'finding.wobbles' },
        ],
        provenance: 'from memory',
        typically: 'Typical is an eighth of an inch or less.',
      },
      answers: [
        {
          meaning: 'finding.wobbles',
          given: { needleOffLine: 0.75, frameLifts: 0.1 },
          otherwise: 0.05,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.firm',
          given: { needleOffLine: 0.25, frameLifts: 0.9 },
          otherwise: 0.95,
          pointsAtFault: false,
        },
      ],
    },
    guideGroove: {
      reach: 'lockout',
      look: 'twineGuides',
      prepare: ['Draw a fingernail round the needle eye, and across each guide the strand runs over.'],
      ask: 'Does your nail catch in a groove, or is it smooth?',
      why: 'A groove holds the strand off its line.',
      minutes: 3,
      answers: [
        { meaning: 'finding.grooved', given: { guideGrooved: 0.9 }, otherwise: 0.06, pointsAtFault: true },
        { meaning: 'finding.smooth', given: { guideGrooved: 0.1 }, otherwise: 0.94, pointsAtFault: false },
      ],
    },
    frameLift: {
      reach: 'lockout',
      look: 'knotterFrame',
      prepare: ['Pry the knotter frame up with a short hand bar, gently. Look for bright rub marks.'],
      ask: 'How far does the frame lift? Or say, loose and wobbles, or firm and tight.',
      why: 'A frame that lifts takes the billhook away from the strand.',
      minutes: 4,
      measure: {
        dimension: 'length',
        plausible: { low: { amount: 0, unit: 'inch' }, high: { amount: 3, unit: 'inch' } },
        bands: [
          { below: { amount: 0.125, unit: 'inch' }, means: 'finding.firm' },
          { means: 'finding.wobbles' },
        ],
        provenance: 'expert estimate',
        typically: 'Typical is a sixteenth of an inch or less.',
      },
      answers: [
        { meaning: 'finding.wobbles', given: { frameLifts: 0.9 }, otherwise: 0.04, pointsAtFault: true },
        { meaning: 'finding.firm', given: { frameLifts: 0.1 }, otherwise: 0.96, pointsAtFault: false },
      ],
    },
  },
});
