import { topic } from '../phrase-rule.ts';

/**
 * What takes a confirmed lockout away. Active in every state; a near match counts, because hearing one
 * wrongly costs minutes and missing one costs a hand.
 */
export const voiding = topic({
  'void.keyGone': {
    risk: 'void',
    forms: ["i don't have the key any more", 'somebody took the key', 'i gave the key away'],
    readBack: 'The key left your pocket.',
  },
  'void.someoneAtTractor': {
    risk: 'void',
    forms: [
      'somebody is at the tractor',
      'someone is in the cab',
      "somebody's coming over",
      "someone's coming",
    ],
    readBack: 'Someone is at the tractor.',
  },
  'void.engineHeard': {
    risk: 'void',
    forms: ['i can hear the engine running', 'the engine is running', 'the engine started'],
    readBack: 'The engine is running.',
  },
  'void.strangeNoise': {
    risk: 'void',
    forms: ['i heard a funny noise', 'something made a noise'],
    readBack: 'You heard something.',
  },
  'void.shaftConnected': {
    risk: 'void',
    forms: ['the shaft is back on again', 'somebody put the shaft back'],
    readBack: 'The shaft is back on.',
  },
  'void.somethingMoved': {
    risk: 'void',
    forms: ['something just moved in there', 'something moved', 'the flywheel moved', 'the plunger moved'],
    readBack: 'Something moved.',
  },
  'void.movedOnTry': {
    risk: 'void',
    forms: ['the wheel moved when i tried', 'it moved when i tried it'],
    readBack: 'It moved when you tried it.',
  },
  'void.blockOut': {
    risk: 'void',
    forms: ['the flywheel block came out', 'the strap came off the needles', 'the brake came off'],
    readBack: 'A block or a strap came off.',
  },
  'void.knotterTripped': {
    risk: 'void',
    forms: ['it tripped all by itself', 'the knotter went off by itself'],
    readBack: 'The knotter tripped.',
  },
  'void.twineTight': {
    risk: 'void',
    forms: ['i put twine back in the needle', 'i threaded the needle again'],
    readBack: 'Twine is back in the needle.',
  },
  'void.pressureBack': {
    risk: 'void',
    forms: ['the pressure is building up again', 'the bale pressure is back on'],
    readBack: 'The bale pressure is back.',
  },
  'void.hayInChamber': {
    risk: 'void',
    forms: ['somebody put hay in the chamber', 'there is fresh hay in the chamber'],
    readBack: 'There is hay in the chamber.',
  },
  'void.balerMoved': {
    risk: 'void',
    forms: ['the baler rolled a bit', 'the tractor rolled a bit', 'a wheel chock came out'],
    readBack: 'The baler or the tractor moved.',
  },
  'void.personChanged': {
    risk: 'void',
    forms: ['somebody else is taking over', 'another person is joining me', 'we are changing shifts'],
    readBack: 'The people changed.',
  },
  'void.wentAway': {
    risk: 'void',
    forms: ["i'm walking away from it", 'i have to leave for a while', 'i was away from the machine'],
    readBack: 'You left the machine.',
  },
  'void.otherZone': {
    risk: 'void',
    forms: ["i'm going into the bale chamber", "i'm moving to the pickup"],
    readBack: 'The work moved to another part of the machine.',
  },
  'void.notSure': {
    risk: 'void',
    forms: ["i don't think it's safe", 'hang on a minute', 'hold on a minute', 'wait a minute'],
    readBack: 'You are not sure it is safe.',
  },
});
