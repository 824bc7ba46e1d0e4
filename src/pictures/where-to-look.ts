import type { PartId } from '../../flows/knotter.ts';

/** Which drawing a part is found in. */
export type Drawing = 'knotter' | 'baler' | 'string';

/** Where a person stands and looks to see a part. Common practice, no source. */
export interface WhereToLook {
  readonly drawing: Drawing;
  /** Completes "Look ...". */
  readonly from: string;
}

export const WHERE_TO_LOOK: Readonly<Record<PartId, WhereToLook>> = {
  twineDisc: { drawing: 'knotter', from: 'from behind, at the notched plates' },
  twineHolder: { drawing: 'knotter', from: 'from behind and below, where it presses on the disc' },
  billhook: { drawing: 'knotter', from: 'from behind, under the frame' },
  tongue: { drawing: 'knotter', from: 'from behind, on top of the billhook' },
  twineFinger: { drawing: 'knotter', from: 'from behind and below, beside the needle slot' },
  knifeArm: { drawing: 'knotter', from: 'from behind, at the arm below the billhook' },
  wiper: { drawing: 'knotter', from: 'from behind, at the curved edge under the billhook' },
  camGear: { drawing: 'knotter', from: 'from behind, at the big toothed wheel on the shaft' },
  knotterFrame: { drawing: 'knotter', from: 'from behind, at the casting that carries one knotter' },
  needle: { drawing: 'baler', from: 'from the side, low down, outside the guards' },
  needleYoke: { drawing: 'baler', from: 'from the side, under the chamber' },
  safetyStop: { drawing: 'baler', from: 'from the side, at the stop ahead of the needles' },
  tripArm: { drawing: 'baler', from: 'from behind, between star wheel and clutch' },
  starWheel: { drawing: 'baler', from: 'from behind, where it rides on the bale' },
  pawl: { drawing: 'baler', from: 'from behind, at the clutch on the end of the shaft' },
  knotterBrake: { drawing: 'baler', from: 'from behind, at the band on the shaft' },
  twineBox: { drawing: 'baler', from: 'from the side, with the lid open' },
  tensioner: { drawing: 'baler', from: 'from the side, where the string leaves the box' },
  twineGuides: { drawing: 'baler', from: 'from the side, along the string to the needle' },
  hayDogs: { drawing: 'baler', from: 'from the side, along the chamber wall' },
  densityRails: { drawing: 'baler', from: 'from behind, where the bale comes out' },
  plunger: { drawing: 'baler', from: 'from the side, outside the guards' },
  plungerKnife: { drawing: 'baler', from: 'from the side, at the edge of the plunger' },
  flywheel: { drawing: 'baler', from: 'from well clear, at the heavy wheel in front' },
  driveShaft: { drawing: 'baler', from: 'from the side, between tractor and baler' },
  driveChain: { drawing: 'baler', from: 'from the side, along the drive to the knotters' },
  tractorSeat: { drawing: 'baler', from: 'at the tractor' },
  failedString: { drawing: 'string', from: 'at both ends of the string, off the bale' },
  bale: { drawing: 'baler', from: 'at the bales on the ground' },
  windrow: { drawing: 'baler', from: 'at the hay ahead of the pick-up' },
};
