/**
 * The parts a person is sent to look at, by their trade names (common practice, no source).
 * One name a part, the same in code, in speech and on screen.
 */
export const PARTS = {
  twineDisc: 'twine disc',
  twineHolder: 'twine holder',
  billhook: 'billhook',
  tongue: 'billhook tongue',
  twineFinger: 'twine finger',
  knifeArm: 'knife arm',
  wiper: 'wiper',
  camGear: 'cam gear',
  knotterFrame: 'knotter frame',
  needle: 'needle',
  needleYoke: 'needle yoke',
  safetyStop: 'needle safety stop',
  tripArm: 'trip arm',
  starWheel: 'star wheel',
  pawl: 'clutch pawl',
  knotterBrake: 'knotter brake',
  twineBox: 'twine box',
  tensioner: 'twine tensioner',
  twineGuides: 'twine guides',
  hayDogs: 'hay dogs',
  densityRails: 'density rails',
  plunger: 'plunger',
  plungerKnife: 'plunger knife',
  flywheel: 'flywheel',
  driveShaft: 'drive shaft',
  driveChain: 'drive chain',
  tractorSeat: 'tractor seat',
  failedString: 'failed string',
  bale: 'bale',
  windrow: 'windrow',
} as const satisfies Readonly<Record<string, string>>;

export type PartId = keyof typeof PARTS;
