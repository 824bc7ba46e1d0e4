import { defineFamily } from './family.ts';

/**
 * Needles were struck, the shear bolt broke with the needles up, or the needle safety stop caught the plunger.
 * Needles out of time with the plunger can break the machine and whoever stands by it, so nothing is measured or
 * put right here: a few looks from outside the guards tell the dealer or a licensed technician what to bring.
 *
 * Priors, likelihoods and minutes are expert estimates. That a struck needle goes to the dealer is common practice.
 */
const LEAVE_IT = [
  'Leave it shut down, with the key in your pocket.',
  'Do not turn it over, and do not fit another shear bolt.',
  'Photograph what you saw, from outside the guards.',
] as const;

export const needlesStruck = defineFamily({
  id: 'needlesStruck',
  name: 'needles and plunger out of step',
  symptom: 'symptom.needlesStruck',
  causes: {
    brakeWeak: {
      name: 'the knotter brake is weak and the needles creep',
      prior: 0.26,
      remedy: {
        reach: 'safeStop',
        steps: LEAVE_IT,
        minutes: 5,
        refer: 'A brake that lets needles creep is work for the dealer or a licensed technician.',
      },
    },
    timingLost: {
      name: 'the needles are out of time with the plunger',
      prior: 0.2,
      remedy: {
        reach: 'safeStop',
        steps: LEAVE_IT,
        minutes: 5,
        refer: 'Timing needles to plunger is work for the dealer or a licensed technician.',
      },
    },
    needleBent: {
      name: 'a needle is bent or was struck',
      prior: 0.17,
      remedy: {
        reach: 'safeStop',
        steps: LEAVE_IT,
        minutes: 5,
        refer:
          'A struck needle is replaced, never straightened, and why it was struck has to be found. That is for the dealer or a licensed technician.',
      },
    },
    jammedInPath: {
      name: 'something is jammed in the path of the needles',
      prior: 0.12,
      remedy: {
        reach: 'safeStop',
        steps: LEAVE_IT,
        minutes: 5,
        refer:
          'What jammed the needles may have bent them or moved their timing. The dealer or a licensed technician has to look before it runs.',
      },
    },
    linkageLoose: {
      name: 'the needle linkage is worn or loose',
      prior: 0.1,
      remedy: {
        reach: 'safeStop',
        steps: LEAVE_IT,
        minutes: 5,
        refer: 'A loose needle linkage is work for the dealer or a licensed technician.',
      },
    },
    safetyStopWrong: {
      name: 'the needle safety stop is stuck or set wrong',
      prior: 0.1,
      remedy: {
        reach: 'safeStop',
        steps: [...LEAVE_IT, 'Never tie the safety stop back.'],
        minutes: 5,
        refer: 'The needle safety stop is set by the dealer or a licensed technician.',
      },
    },
    plungerLoose: {
      name: 'the plunger runs loose and meets the needles',
      prior: 0.05,
      remedy: {
        reach: 'safeStop',
        steps: LEAVE_IT,
        minutes: 5,
        refer: 'A loose plunger is work for the dealer or a licensed technician.',
      },
    },
  },
  checks: {
    needleLook: {
      reach: 'safeStop',
      look: 'needle',
      ask: 'From outside the guards, compare both needles. Is one bent out of shape, or are they exactly alike?',
      why: 'A struck needle shows beside a good one.',
      minutes: 1,
      answers: [
        {
          meaning: 'finding.bent',
          given: { needleBent: 0.9, timingLost: 0.3, plungerLoose: 0.25 },
          otherwise: 0.1,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.looksAlike',
          given: { needleBent: 0.1, timingLost: 0.7, plungerLoose: 0.75 },
          otherwise: 0.9,
          pointsAtFault: false,
        },
      ],
    },
    needleSlots: {
      reach: 'safeStop',
      look: 'plunger',
      ask: 'Shine a light into the needle slots. Is a lump jammed in one, or is the path open and clear?',
      why: 'A stone or a wad of hay in a slot stops a needle dead.',
      minutes: 1,
      answers: [
        { meaning: 'finding.jammedIn', given: { jammedInPath: 0.88 }, otherwise: 0.04, pointsAtFault: true },
        {
          meaning: 'finding.pathClear',
          given: { jammedInPath: 0.12 },
          otherwise: 0.96,
          pointsAtFault: false,
        },
      ],
    },
    driveHistory: {
      reach: 'safeStop',
      look: 'driveChain',
      ask: 'Since it last ran well, were the chain or gears worked on, or was nothing touched?',
      why: 'Timing is mostly lost when the drive has been apart.',
      minutes: 0.5,
      answers: [
        {
          meaning: 'finding.driveWorkedOn',
          given: { timingLost: 0.7 },
          otherwise: 0.08,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.nothingChanged',
          given: { timingLost: 0.3 },
          otherwise: 0.92,
          pointsAtFault: false,
        },
      ],
    },
    needleRest: {
      reach: 'safeStop',
      look: 'needleYoke',
      ask: 'From outside the guards, look at the needles at rest. Have they crept away, or rest where they belong?',
      why: 'Needles that creep up meet the plunger.',
      minutes: 1,
      answers: [
        {
          meaning: 'finding.needlesDrift',
          given: { brakeWeak: 0.75, linkageLoose: 0.35 },
          otherwise: 0.12,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.needlesStay',
          given: { brakeWeak: 0.25, linkageLoose: 0.65 },
          otherwise: 0.88,
          pointsAtFault: false,
        },
      ],
    },
    safetyStopLook: {
      reach: 'safeStop',
      look: 'safetyStop',
      ask: 'From outside the guards, look at the needle safety stop. Is it sticking out, or drawn all the way back?',
      why: 'With the needles home it should be out of the plunger path.',
      minutes: 1,
      answers: [
        {
          meaning: 'finding.stickingOut',
          given: { safetyStopWrong: 0.75, brakeWeak: 0.35 },
          otherwise: 0.1,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.drawnBack',
          given: { safetyStopWrong: 0.25, brakeWeak: 0.65 },
          otherwise: 0.9,
          pointsAtFault: false,
        },
      ],
    },
  },
});
