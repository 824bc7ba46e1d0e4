import { topic } from '../phrase-rule.ts';

/**
 * Figures that may be asked for in every state of a job. They change nothing of it, so each is long and unlike the
 * others: a figure asked by mistake only costs a "go back".
 */
export const figures = topic({
  'figure.twineForBales': {
    risk: 'navigation',
    forms: ['how much twine do i need', 'how much twine is in a bale'],
    readBack: 'Twine for your bales.',
  },
  'figure.balesFromTwine': {
    risk: 'navigation',
    forms: ['how many bales will my twine tie', 'how many bales to a package'],
    readBack: 'Bales from your twine.',
  },
  'figure.balesLeftOnBall': {
    risk: 'navigation',
    forms: ['how many bales are left on the ball', 'how many bales are left', 'when do i change the ball'],
    readBack: 'Bales left on the ball.',
  },
  'figure.twineWeight': {
    risk: 'navigation',
    forms: ['what does the twine for it weigh'],
    readBack: 'Weight of the twine.',
  },
  'figure.ballLength': {
    risk: 'navigation',
    forms: ['how long is the twine on a ball'],
    readBack: 'Length from weight.',
  },
  'figure.runnage': {
    risk: 'navigation',
    forms: ['how fine is this twine'],
    readBack: 'Fineness of the twine.',
  },
  'figure.twineLabel': {
    risk: 'navigation',
    forms: ['did i get all the twine i paid for'],
    readBack: 'The twine against its label.',
  },
  'figure.baleDensity': {
    risk: 'navigation',
    forms: ['how dense are my bales'],
    readBack: 'Density of a bale.',
  },
  'figure.baleWeight': {
    risk: 'navigation',
    forms: ['what would a bale weigh at that density'],
    readBack: 'Weight of a bale.',
  },
  'figure.knotLoad': {
    risk: 'navigation',
    forms: ['how strong must the knot be', 'how much push can the knots hold'],
    readBack: 'What the knots hold.',
  },
  'figure.unevenStrings': {
    risk: 'navigation',
    forms: ['what if one string pulls harder'],
    readBack: 'One string pulling harder.',
  },
  'figure.flake': {
    risk: 'navigation',
    forms: ['how thick is every flake'],
    readBack: 'Thickness of a flake.',
  },
  'figure.balesPerHour': {
    risk: 'navigation',
    forms: ['how many bales an hour is that'],
    readBack: 'Bales an hour.',
  },
  'figure.missRate': {
    risk: 'navigation',
    forms: ['how often does it really miss', 'work out the miss rate'],
    readBack: 'How often it misses.',
  },
  'figure.whichSide': {
    risk: 'navigation',
    forms: ['is it really just the one side'],
    readBack: 'One side or both.',
  },
  'figure.ballChange': {
    risk: 'navigation',
    forms: ['do the misses follow a ball change'],
    readBack: 'Misses after ball changes.',
  },
  'figure.fixed': {
    risk: 'navigation',
    forms: ['is it fixed for sure', 'are we sure it is fixed'],
    readBack: 'Whether it is fixed.',
  },
  'figure.cleanTies': {
    risk: 'navigation',
    forms: ['how many good ties would prove it'],
    readBack: 'Ties that prove it.',
  },
  'figure.baleOnOrStop': {
    risk: 'navigation',
    forms: ['should i bale on or stop', 'bale on or stop'],
    readBack: 'Bale on, or stop.',
  },
  'figure.plunger': {
    risk: 'navigation',
    forms: ['where does the crank put the plunger'],
    readBack: 'Crank and plunger.',
  },
  'figure.crankAngle': {
    risk: 'navigation',
    forms: ['what angle has the crank turned to'],
    readBack: 'Angle of the crank.',
  },
  'figure.strokeTime': {
    risk: 'navigation',
    forms: ['how long does one stroke take'],
    readBack: 'Time of a stroke.',
  },
  'figure.tooth': {
    risk: 'navigation',
    forms: ['what is one tooth in degrees'],
    readBack: 'One tooth in degrees.',
  },
  'figure.gearRatio': {
    risk: 'navigation',
    forms: ['work out the gear ratio'],
    readBack: 'Gear ratio.',
  },
  'figure.chain': {
    risk: 'navigation',
    forms: ['is the drive chain stretched'],
    readBack: 'Stretch of the chain.',
  },
  'figure.disc': {
    risk: 'navigation',
    forms: ['does the twine disc drive slip'],
    readBack: 'Drive of the twine disc.',
  },
  'figure.springBolt': {
    risk: 'navigation',
    forms: ['what does turning the bolt change'],
    readBack: 'Spring and bolt.',
  },
  'figure.season': {
    risk: 'navigation',
    forms: ['how many days of baling is that'],
    readBack: 'Days of baling.',
  },
  'figure.hayRate': {
    risk: 'navigation',
    forms: ['how much hay an hour goes through'],
    readBack: 'Hay in an hour.',
  },
  'figure.dryMatter': {
    risk: 'navigation',
    forms: ['how much of it is dry matter'],
    readBack: 'Dry matter in a bale.',
  },
  'figure.denser': {
    risk: 'navigation',
    forms: ['are the bales denser than they were'],
    readBack: 'Density then and now.',
  },
  'figure.knotRatio': {
    risk: 'navigation',
    forms: ['what does the knot cost in strength'],
    readBack: 'Strength left by a knot.',
  },
  'figure.shaftSpeed': {
    risk: 'navigation',
    forms: ['how fast does the driven shaft turn'],
    readBack: 'Speed of the driven shaft.',
  },
  'figure.toothSlip': {
    risk: 'navigation',
    forms: ['what does a slipped tooth move'],
    readBack: 'A slipped tooth and the plunger.',
  },
  'figure.wear': {
    risk: 'navigation',
    forms: ['how long will this part last', 'work out the wear line'],
    readBack: 'Bales left in a part.',
  },
  'figure.wearDate': {
    risk: 'navigation',
    forms: ['on which date is that part worn out'],
    readBack: 'Date of the wear limit.',
  },
  'figure.cam': {
    risk: 'navigation',
    forms: ['how long will the cam gear last'],
    readBack: 'Wear of the cam gear.',
  },
});

/** What the length on a twine label is the length of. */
export const labels = topic({
  'label.eachBall': {
    risk: 'answer',
    forms: ['that is for each of the balls', 'for each ball'],
    readBack: 'For each ball.',
  },
  'label.wholePackage': {
    risk: 'answer',
    forms: ['that is for the whole package', 'for the whole package'],
    readBack: 'For the whole package.',
  },
});
