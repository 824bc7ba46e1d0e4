/**
 * Parts as people name them when they ask what they said of them: fewer than there are, because a person says
 * "the spring" for whatever the spring belongs to. Common practice, no source.
 */
export const NAMED_PARTS = {
  spring: 'the spring',
  holder: 'the twine holder',
  disc: 'the twine disc',
  billhook: 'the billhook',
  knife: 'the knife',
  wiper: 'the wiper',
  finger: 'the twine finger',
  needle: 'the needle',
  pawl: 'the clutch pawl',
  twine: 'the twine box',
  string: 'the failed string',
  bale: 'the bale',
} as const;

export type NamedPart = keyof typeof NAMED_PARTS;

export const NAMED_PART_IDS = Object.keys(NAMED_PARTS) as readonly NamedPart[];
