import type { MeaningId } from '../../grammar/lexicon.ts';
import type { PartId } from '../knotter.ts';

/**
 * One step of the shut-down, with the phrase that alone can clear it and the published clause it answers.
 *
 * The order is that of 29 CFR 1910.147(d) (control of hazardous energy), which the farm rule 29 CFR 1928.57
 * and the Safe Stop of the UK Health and Safety Executive agree with. 29 CFR 1910.147(a)(1)(ii)(A) leaves
 * agricultural employment out of its scope: it serves here as the best published sequence. The operator's
 * manual, local rules and licensed practice come before anything said here.
 */
export interface ProcedureStep {
  readonly id: string;
  readonly confirmedBy: MeaningId;
  /** The whole instruction, one thing at a time. */
  readonly instruct: string;
  /** Said on the second time through and when asked again. */
  readonly brief: string;
  readonly why: string;
  readonly look: PartId;
  /** Published clauses the step answers, most specific first. */
  readonly answersTo: readonly string[];
}

/** Steps 1 to 7: after these the machine stands still, and eyes may go in. Hands may not. */
export const SAFE_STOP_STEPS = [
  {
    id: 'everyoneTold',
    confirmedBy: 'lockout.everyoneTold',
    instruct:
      'Tell everyone here that you are shutting down. One person is in charge. Children and helpers stay well back.',
    brief: 'Is everyone told, and are you in charge?',
    why: 'People get hurt when somebody else puts the power back on.',
    look: 'tractorSeat',
    answersTo: ['29 CFR 1910.147(c)(9)', '29 CFR 1928.57(a)(6)(iv)'],
  },
  {
    id: 'energiesKnown',
    confirmedBy: 'lockout.energiesKnown',
    instruct:
      'Think what can still move: flywheel, needles, plunger, springs, bale pressure, tight twine, and the knives.',
    brief: 'Do you know what can still move?',
    why: 'You can only block what you have thought of.',
    look: 'flywheel',
    answersTo: ['29 CFR 1910.147(d)(1)'],
  },
  {
    id: 'powerTakeOffOff',
    confirmedBy: 'lockout.powerTakeOffOff',
    instruct: 'From the seat, throttle down, and switch the power take-off off.',
    brief: 'Is the power take-off off?',
    why: 'An orderly stop leaves nothing half way round.',
    look: 'tractorSeat',
    answersTo: ['29 CFR 1910.147(d)(2)'],
  },
  {
    id: 'parked',
    confirmedBy: 'lockout.parked',
    instruct: 'Parking brake on. Gears and hydraulics in neutral. Pick-up and jack down.',
    brief: 'Is it parked, with gears in neutral?',
    why: 'Nothing may roll or drop while you are behind it.',
    look: 'tractorSeat',
    answersTo: ['29 CFR 1910.147(d)(5)(i)', 'HSE Safe Stop: handbrake on, controls in neutral'],
  },
  {
    id: 'engineOff',
    confirmedBy: 'lockout.engineOff',
    instruct: 'Shut the engine down.',
    brief: 'Is the engine shut down?',
    why: 'With the engine off there is no power to catch you.',
    look: 'tractorSeat',
    answersTo: ['29 CFR 1928.57(a)(6)(iii)', 'HSE Safe Stop: stop the engine'],
  },
  {
    id: 'keyInPocket',
    confirmedBy: 'lockout.keyInPocket',
    instruct: 'Take the key out and put it in your own pocket. Lock or tag the switch if you can.',
    brief: 'Is the key in your own pocket?',
    why: 'While you hold the key nobody can start it.',
    look: 'tractorSeat',
    answersTo: ['29 CFR 1910.147(d)(4)(i)', 'HSE Safe Stop: remove the key'],
  },
  {
    id: 'flywheelStopped',
    confirmedBy: 'lockout.flywheelStopped',
    instruct: 'Stand clear. Look and listen until the flywheel and the shaft are still.',
    brief: 'Do you see the flywheel stopped?',
    why: 'A flywheel can coast for minutes. Only your eyes tell when it has stopped.',
    look: 'flywheel',
    answersTo: ['29 CFR 1928.57(a)(6)(iii)'],
  },
] as const satisfies readonly ProcedureStep[];

/** Steps 8 to 16: after these the machine is locked out, and hands may go in. */
export const LOCKOUT_STEPS = [
  {
    id: 'shaftOff',
    confirmedBy: 'lockout.shaftOff',
    instruct: 'Take the drive shaft off the tractor, and hang it up.',
    brief: 'Is the shaft off the tractor?',
    why: 'With the shaft off, nothing the tractor does can turn the baler.',
    look: 'driveShaft',
    answersTo: ['29 CFR 1928.57(a)(6)(iii)', '29 CFR 1910.147(d)(3)'],
  },
  {
    id: 'wheelsChocked',
    confirmedBy: 'lockout.wheelsChocked',
    instruct: 'Chock the wheels of the baler and of the tractor.',
    brief: 'Are the wheels chocked?',
    why: 'A baler that rolls can crush you or turn its own drive.',
    look: 'driveShaft',
    answersTo: ['29 CFR 1910.147(d)(5)(i)', 'ISO 14118, external influences'],
  },
  {
    id: 'flywheelHeld',
    confirmedBy: 'lockout.flywheelHeld',
    instruct: 'Put the flywheel brake on, or block the flywheel.',
    brief: 'Is the flywheel held?',
    why: 'Turning the flywheel by hand moves the needles and the plunger.',
    look: 'flywheel',
    answersTo: ['29 CFR 1910.147(d)(5)(i)'],
  },
  {
    id: 'knotterHome',
    confirmedBy: 'lockout.knotterHome',
    instruct:
      'Look at the knotters. At home, or tripped part way? If one is tripped, say: a knotter has been tripped.',
    brief: 'Are the knotters at home?',
    why: 'A tripped knotter finishes its cycle the moment the flywheel turns.',
    look: 'pawl',
    answersTo: ['29 CFR 1910.147(d)(5)(i)', 'ISO 14118, stored energy'],
  },
  {
    id: 'needlesHome',
    confirmedBy: 'lockout.needlesHome',
    instruct: 'Needles at home, safety stop in sight. Strap or block the needle yoke.',
    brief: 'Are the needles home and strapped?',
    why: 'Needles can drop or creep on a weak brake.',
    look: 'needleYoke',
    answersTo: ['29 CFR 1910.147(d)(5)(i)'],
  },
  {
    id: 'densityReleased',
    confirmedBy: 'lockout.densityReleased',
    instruct:
      'Let the bale pressure off, both sides even, gauge at zero. Never feel for an oil leak by hand.',
    brief: 'Is the bale pressure released?',
    why: 'The springs and the oil hold the hay tight, and it pushes back.',
    look: 'densityRails',
    answersTo: ['29 CFR 1910.147(d)(5)(i)'],
  },
  {
    id: 'twineSlack',
    confirmedBy: 'lockout.twineSlack',
    instruct:
      'Take a picture of the strings first. Then stand to the side and cut them below the disc with a long hook knife.',
    brief: 'Is the twine cut and slack?',
    why: 'Tight twine whips, and pulls fingers in.',
    look: 'twineDisc',
    answersTo: ['29 CFR 1910.147(d)(5)(i)'],
  },
  {
    id: 'triedNothingMoved',
    confirmedBy: 'lockout.triedNothingMoved',
    instruct: 'Everyone clear. One hand on the flywheel rim, body clear, and push. It must not move.',
    brief: 'You pushed the flywheel. Did nothing move?',
    why: 'Trying is the only proof that the lockout holds.',
    look: 'flywheel',
    answersTo: ['29 CFR 1910.147(d)(6)'],
  },
  {
    id: 'confirmed',
    confirmedBy: 'lockout.confirmed',
    instruct:
      'Key in your pocket. Shaft off. Wheels chocked. Flywheel and needles held. Pressure off. Twine slack. Nothing moved. If every word is true, confirm.',
    brief: 'If every word of that is still true, confirm.',
    why: 'Your own words go into the record, and only then do guards open.',
    look: 'knotterFrame',
    answersTo: ['29 CFR 1910.147(d)(6)', 'HSE: all movement has stopped before guards come off'],
  },
] as const satisfies readonly ProcedureStep[];

/**
 * The test cycle turned by hand: a release for moving parts, so hands are on the flywheel rim and nowhere else.
 * Follows the sequence of 29 CFR 1910.147(f)(1): clear tools, clear people, remove devices, test, isolate again.
 */
export const HAND_TURN_STEPS = [
  {
    id: 'toolsOut',
    confirmedBy: 'handTurn.toolsOut',
    instruct:
      'The key stays in your pocket and the shaft stays off. Take every tool and rag out, and count them.',
    brief: 'Are all the tools out and counted?',
    why: 'A tool left in breaks a needle or flies.',
    look: 'knotterFrame',
    answersTo: ['29 CFR 1910.147(f)(1)(i)'],
  },
  {
    id: 'peopleClear',
    confirmedBy: 'handTurn.peopleClear',
    instruct: 'Anybody with you stands ten feet off, where they see you.',
    brief: 'Is everybody standing clear?',
    why: 'Needles and knife arm move without warning.',
    look: 'knotterFrame',
    answersTo: ['29 CFR 1910.147(f)(1)(ii)'],
  },
  {
    id: 'blocksOff',
    confirmedBy: 'handTurn.blocksOff',
    instruct: 'Take the strap off the needles and the block off the flywheel.',
    brief: 'Are the strap and the block off?',
    why: 'Only now can it turn. From here your hands belong on the rim.',
    look: 'needleYoke',
    answersTo: ['29 CFR 1910.147(f)(1)(iii)'],
  },
] as const satisfies readonly ProcedureStep[];

/** The last work under the lockout before the baler runs: 29 CFR 1910.147(e)(1), everything inspected and in place. */
export const READY_STEPS = [
  {
    id: 'needlesThreaded',
    confirmedBy: 'release.needlesThreaded',
    instruct: 'With everything still locked out, thread the needles by hand.',
    brief: 'Are the needles threaded?',
    why: 'Twine is threaded at rest, never on a running baler.',
    look: 'needle',
    answersTo: ['29 CFR 1910.147(e)(1)'],
  },
  {
    id: 'toolsOut',
    confirmedBy: 'release.toolsOut',
    instruct: 'Count your tools out. Close every guard.',
    brief: 'Tools out and guards on?',
    why: 'A guard left open is a hand caught later.',
    look: 'knotterFrame',
    answersTo: ['29 CFR 1910.147(e)(1)'],
  },
] as const satisfies readonly ProcedureStep[];

/** Taking the lockout down and power on, in the order of 29 CFR 1910.147(e)(2) and (3). */
export const RELEASE_STEPS = [
  {
    id: 'straightenedUp',
    confirmedBy: 'release.straightenedUp',
    instruct:
      'Take off strap, blocks and chocks, and the flywheel brake. Put the shaft back on. Set the bale pressure.',
    brief: 'Are blocks, straps and chocks away?',
    why: 'A brake left on shears the bolt at the start.',
    look: 'flywheel',
    answersTo: ['29 CFR 1910.147(e)(3)'],
  },
  {
    id: 'nobodyNear',
    confirmedBy: 'release.nobodyNear',
    instruct:
      'Send everyone away from the baler. Sit in the seat. Watch from there, never from beside the knotters.',
    brief: 'Is nobody near it, and are you in the seat?',
    why: 'Nobody may stand at a running knotter.',
    look: 'tractorSeat',
    answersTo: ['29 CFR 1910.147(e)(2)(i)'],
  },
] as const satisfies readonly ProcedureStep[];
