import { defineFamily } from './family.ts';
import { HOLDER_PULL, TONGUE_PULL } from './pulls.ts';

/**
 * Both strands are cut and neither is knotted. Ends with a curl in them were round the billhook but not gripped,
 * or let go too early; straight ends never got onto it. The disc still holds the new strand, so the next bale
 * starts as it should.
 *
 * Priors, likelihoods and minutes are expert estimates. Settings marked "from memory" are typical only; the
 * operator's manual of the machine wins.
 */
export const noKnotEitherEnd = defineFamily({
  id: 'noKnotEitherEnd',
  name: 'both strands cut and neither knotted',
  symptom: 'symptom.noKnotEitherEnd',
  causes: {
    tongueLoose: {
      name: 'the billhook tongue spring is set too loose',
      prior: 0.22,
      remedy: {
        reach: 'lockout',
        steps: [
          'Tighten the tongue spring one quarter of a turn, on this knotter only. Count the turns.',
          'Lift the tongue with the scale again, and compare it with the other knotter.',
        ],
        minutes: 6,
      },
    },
    tongueWorn: {
      name: 'the billhook tongue is worn or does not close',
      prior: 0.18,
      remedy: {
        reach: 'lockout',
        steps: [
          'Fit a new tongue with its roller and pin, or a complete billhook.',
          'Set the tongue spring from the start, by the manual of your machine.',
          'Shine a light behind the closed tongue. None should show at the tip.',
        ],
        minutes: 35,
        parts: ['billhook tongue', 'tongue roller and pin'],
      },
    },
    knifeDull: {
      name: 'the knife is dull or nicked and drags the strands',
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
    knifeEarly: {
      name: 'the knife arm cuts too early',
      prior: 0.1,
      remedy: {
        reach: 'lockout',
        steps: [
          'Look at the roller on the knife arm. Replace it if it is flat or loose.',
          'Set the arm by the manual of your machine. If the arm or its casting is cracked, stop and call the dealer.',
        ],
        minutes: 30,
        parts: ['knife arm roller'],
      },
    },
    billhookPartTurn: {
      name: 'the billhook does not make a full turn',
      prior: 0.12,
      remedy: {
        reach: 'lockout',
        steps: [
          'Look for a sheared pin in the billhook pinion. Fit a new one.',
          'Look at the teeth of pinion and cam gear. If any are missing or cracked, stop and call the dealer.',
        ],
        minutes: 40,
        parts: ['billhook pin'],
      },
    },
    strandsNotAcross: {
      name: 'the strands are not brought across the billhook',
      prior: 0.1,
      remedy: {
        reach: 'lockout',
        steps: [
          'Compare the twine finger with the one on the other knotter. Replace it if it is bent or grooved.',
          'Set the travel of the finger by the manual of your machine.',
        ],
        minutes: 25,
        parts: ['twine finger'],
      },
    },
    billhookRusty: {
      name: 'rust, paint or sap is on the billhook',
      prior: 0.1,
      remedy: {
        reach: 'lockout',
        steps: [
          'Clean the billhook and the tongue. Polish them with fine cloth until they are bright.',
          'Do not file the billhook. Its shape makes the knot.',
        ],
        minutes: 8,
      },
    },
    holderFarTooLoose: {
      name: 'the twine holder is so loose that both strands pull through',
      prior: 0.06,
      remedy: {
        reach: 'lockout',
        steps: [
          'Tighten the holder bolt one eighth of a turn, on this knotter only. Count the turns.',
          'Pull the strand again with the scale, and compare it with the other knotter.',
        ],
        minutes: 6,
      },
    },
  },
  checks: {
    billhookSurface: {
      reach: 'safeStop',
      look: 'billhook',
      ask: 'Shine a light on the billhook and its tongue. Rusty, sticky or rough, or clean and bright?',
      why: 'After a winter, rust alone keeps the tongue from gripping. Looking takes a minute.',
      minutes: 1,
      answers: [
        { meaning: 'finding.rough', given: { billhookRusty: 0.92 }, otherwise: 0.06, pointsAtFault: true },
        { meaning: 'finding.clean', given: { billhookRusty: 0.08 }, otherwise: 0.94, pointsAtFault: false },
      ],
    },
    knifeEdge: {
      reach: 'safeStop',
      look: 'knifeArm',
      ask: 'Shine a light on the knife edge. Dull or nicked, or sharp from end to end?',
      why: 'A dull knife drags the strands off before it cuts them.',
      minutes: 1.5,
      answers: [
        { meaning: 'finding.bladeDull', given: { knifeDull: 0.88 }, otherwise: 0.06, pointsAtFault: true },
        { meaning: 'finding.bladeKeen', given: { knifeDull: 0.12 }, otherwise: 0.94, pointsAtFault: false },
      ],
    },
    tongueSeat: {
      reach: 'safeStop',
      look: 'tongue',
      ask: 'Shine a light behind the closed tongue. Does light show at the tip, or does it close up all the way?',
      why: 'A tongue that does not close cannot hold the strands while the knot is made.',
      minutes: 2,
      answers: [
        { meaning: 'finding.lightShows', given: { tongueWorn: 0.88 }, otherwise: 0.05, pointsAtFault: true },
        { meaning: 'finding.closesUp', given: { tongueWorn: 0.12 }, otherwise: 0.95, pointsAtFault: false },
      ],
    },
    tonguePull: {
      ...TONGUE_PULL,
      why: 'The lift shows whether the tongue grips hard enough.',
      answers: [
        {
          meaning: 'finding.liftsEasily',
          given: { tongueLoose: 0.9, tongueWorn: 0.4 },
          otherwise: 0.06,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.liftsEven',
          given: { tongueLoose: 0.08, tongueWorn: 0.55 },
          otherwise: 0.88,
          pointsAtFault: false,
        },
        {
          meaning: 'finding.liftsHard',
          given: { tongueLoose: 0.02, tongueWorn: 0.05 },
          otherwise: 0.06,
          pointsAtFault: false,
        },
      ],
    },
    holderPull: {
      ...HOLDER_PULL,
      why: 'If the holder lets both strands through, there is nothing left to knot.',
      answers: [
        {
          meaning: 'finding.slipsEasily',
          given: { holderFarTooLoose: 0.93 },
          otherwise: 0.06,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.holdsEven',
          given: { holderFarTooLoose: 0.06 },
          otherwise: 0.88,
          pointsAtFault: false,
        },
        {
          meaning: 'finding.holdsTooTight',
          given: { holderFarTooLoose: 0.01 },
          otherwise: 0.06,
          pointsAtFault: false,
        },
      ],
    },
    slowCycle: {
      reach: 'handTurn',
      look: 'billhook',
      prepare: [
        'Paint a mark on the billhook, and one on the frame beside it.',
        'Thread the needle by hand, and lay the held strand in the disc, as in work.',
      ],
      ask: 'Turn the flywheel by the rim, through one cycle. Does everything work in the right order? Or is it the knife, the billhook, or the strings?',
      why: 'One slow turn shows whether the knife is early, the billhook short, or the strands astray.',
      minutes: 7,
      answers: [
        {
          meaning: 'finding.cutsEarly',
          given: { knifeEarly: 0.88, billhookPartTurn: 0.03, strandsNotAcross: 0.02 },
          otherwise: 0.03,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.billhookPartWay',
          given: { knifeEarly: 0.03, billhookPartTurn: 0.92, strandsNotAcross: 0.02 },
          otherwise: 0.02,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.neverReachesBillhook',
          given: { knifeEarly: 0.02, billhookPartTurn: 0.02, strandsNotAcross: 0.9 },
          otherwise: 0.03,
          pointsAtFault: true,
        },
        {
          meaning: 'finding.inOrder',
          given: { knifeEarly: 0.07, billhookPartTurn: 0.03, strandsNotAcross: 0.06 },
          otherwise: 0.92,
          pointsAtFault: false,
        },
      ],
    },
  },
});
