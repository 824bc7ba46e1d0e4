import { topic } from '../phrase-rule.ts';

/**
 * Each lockout step has a phrase of its own content, four syllables and more, so that no stray "yes" and no
 * neighbour's phrase can clear it. Only the step that is asked for listens for its phrase.
 */
export const lockout = topic({
  'lockout.everyoneTold': {
    risk: 'confirm',
    forms: ["everyone is told and i'm in charge", "everybody is told and i'm in charge"],
    readBack: 'Everyone is told and you are in charge.',
  },
  'lockout.energiesKnown': {
    risk: 'confirm',
    forms: ['i know what can still move', 'i know everything that can move'],
    readBack: 'You know what can still move.',
  },
  'lockout.powerTakeOffOff': {
    risk: 'confirm',
    forms: ['power take off is switched off', 'the power take off is off'],
    readBack: 'Power take-off is off.',
  },
  'lockout.parked': {
    risk: 'confirm',
    forms: ['parking brake on and gears in neutral', "it's parked with gears in neutral"],
    readBack: 'Parked, gears in neutral.',
  },
  'lockout.engineOff': {
    risk: 'confirm',
    forms: ["i've shut the engine down", "i've switched the engine off"],
    readBack: 'Engine is off.',
  },
  'lockout.keyInPocket': {
    risk: 'confirm',
    forms: ['the key is in my pocket', 'i have the key in my pocket'],
    readBack: 'The key is in your pocket.',
  },
  'lockout.flywheelStopped': {
    risk: 'confirm',
    forms: ['i see the flywheel has stopped', 'the flywheel has stopped turning', 'the flywheel has stopped'],
    readBack: 'The flywheel has stopped.',
  },
  'lockout.shaftOff': {
    risk: 'confirm',
    forms: ['the shaft is off the tractor', 'drive shaft is off the tractor'],
    readBack: 'The shaft is off the tractor.',
  },
  'lockout.wheelsChocked': {
    risk: 'confirm',
    forms: ['all of the wheels are chocked', 'the wheels are chocked'],
    readBack: 'The wheels are chocked.',
  },
  'lockout.flywheelHeld': {
    risk: 'confirm',
    forms: ["the flywheel can't turn now", 'the flywheel is blocked and held'],
    readBack: 'The flywheel is held.',
  },
  'lockout.knotterHome': {
    risk: 'confirm',
    forms: ['both knotters are at home', 'the knotters are at home'],
    readBack: 'The knotters are at home.',
  },
  'lockout.knotterTripped': {
    risk: 'answer',
    forms: ['a knotter has been tripped', 'the knotter is tripped'],
    readBack: 'A knotter is tripped.',
  },
  'lockout.needlesHome': {
    risk: 'confirm',
    forms: ['needles are home and strapped up', 'the needles are strapped at home'],
    readBack: 'Needles are home and strapped.',
  },
  'lockout.densityReleased': {
    risk: 'confirm',
    forms: ['bale pressure is all released', 'the bale pressure is released'],
    readBack: 'Bale pressure is released.',
  },
  'lockout.twineSlack': {
    risk: 'confirm',
    forms: ['the twine is cut and hanging slack', 'the twine is cut and slack'],
    readBack: 'The twine is cut and slack.',
  },
  'lockout.triedNothingMoved': {
    risk: 'confirm',
    forms: ['i tried it and nothing moved', 'i pushed it and nothing moved'],
    readBack: 'You tried it and nothing moved.',
  },
  'lockout.confirmed': {
    risk: 'confirm',
    forms: ['my lockout is confirmed', 'lockout is confirmed', 'lockout confirmed'],
    readBack: 'Lockout confirmed.',
  },

  'handTurn.toolsOut': {
    risk: 'confirm',
    forms: ['all my tools are out and counted', 'tools are out and counted'],
    readBack: 'Tools are out and counted.',
  },
  'handTurn.peopleClear': {
    risk: 'confirm',
    forms: ['everybody is standing clear', 'everyone is standing clear'],
    readBack: 'Everyone is clear.',
  },
  'handTurn.blocksOff': {
    risk: 'confirm',
    forms: ['strap and flywheel block are off', 'the strap and block are off'],
    readBack: 'Strap and block are off.',
  },
  'handTurn.cycleHome': {
    risk: 'confirm',
    forms: ["it's gone all the way home again", 'the cycle is all the way home'],
    readBack: 'The cycle is home.',
  },

  'release.needlesThreaded': {
    risk: 'confirm',
    forms: ['both needles are threaded up', 'the needles are threaded again'],
    readBack: 'The needles are threaded.',
  },
  'release.toolsOut': {
    risk: 'confirm',
    forms: ['tools are out and guards are on', 'guards are on and tools are out'],
    readBack: 'Tools out, guards on.',
  },
  'release.straightenedUp': {
    risk: 'confirm',
    forms: ['blocks and straps are all away', 'the blocks and straps are away'],
    readBack: 'Blocks and straps are away.',
  },
  'release.nobodyNear': {
    risk: 'confirm',
    forms: ["nobody is near and i'm in the seat", "nobody is near it and i'm in the seat"],
    readBack: 'Nobody is near, you are in the seat.',
  },
  'test.finished': {
    risk: 'answer',
    forms: ['finished running the baler', "i've finished running it", "we're finished running it"],
    readBack: 'Finished running.',
  },
});
