import type { SafetyState } from '../../flows/prompt.ts';

/** How far a person may go, from the farthest place to the nearest. The lever of the safety plate stands at one. */
export const PLACES = ['seat', 'out', 'eyes', 'rim', 'hands'] as const;

export type Place = (typeof PLACES)[number];

export const PLACE_WORDS: Readonly<Record<Place, string>> = {
  seat: 'Seat',
  out: 'Out',
  eyes: 'Eyes',
  rim: 'Rim',
  hands: 'Hands',
};

/** What the safety plate says of a state. */
export interface SafetyWords {
  readonly word: string;
  /** What a person may do, in one breath. */
  readonly meaning: string;
  readonly place: Place;
  /** Where a person is on the way to, and not yet; the lever then stands between two places. */
  readonly onTheWayTo?: Place;
}

export const SAFETY_WORDS: Readonly<Record<SafetyState, SafetyWords>> = {
  keepOut: { word: 'Keep out', meaning: 'Hands and face stay outside the guards.', place: 'out' },
  stopping: {
    word: 'Stopping',
    meaning: 'Shutting down, step by step. Stay out.',
    place: 'out',
    onTheWayTo: 'eyes',
  },
  eyesOnly: { word: 'Eyes only', meaning: 'Look in with a light. Touch nothing.', place: 'eyes' },
  thisStepOnly: {
    word: 'This step',
    meaning: 'Do what is asked, and nothing else.',
    place: 'eyes',
    onTheWayTo: 'rim',
  },
  handTurn: { word: 'Rim only', meaning: 'Hands on the flywheel rim, nowhere else.', place: 'rim' },
  lockedOut: { word: 'Locked out', meaning: 'Hands may go in.', place: 'hands' },
  poweredTest: { word: 'In the seat', meaning: 'It runs. Nobody goes near the baler.', place: 'seat' },
};
