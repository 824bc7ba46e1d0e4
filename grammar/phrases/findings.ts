import { topic } from '../phrase-rule.ts';

/**
 * What an inspection finds. A good and a bad finding of the same check share no words worth mishearing
 * ("cracked right through" against "sound all over", not "a crack" against "no crack").
 */
export const findings = topic({
  'finding.cracked': {
    risk: 'answer',
    forms: ["it's cracked or broken", "it's cracked right through", "it's cracked", "it's broken"],
    readBack: 'Cracked.',
  },
  'finding.sound': {
    risk: 'answer',
    forms: ['it looks sound all over', 'it looks sound', 'it looks good to me'],
    readBack: 'Sound.',
  },
  'finding.packed': {
    risk: 'answer',
    forms: ["it's packed full of chaff", "it's full of chaff", "it's rusted up", "it's gummed up"],
    readBack: 'Packed.',
  },
  'finding.clean': {
    risk: 'answer',
    forms: ['clean all the way across', "it's clean and bright", "it's clean"],
    readBack: 'Clean.',
  },
  'finding.balesHeavier': {
    risk: 'answer',
    forms: ['the bales got a lot heavier', 'the bales are heavier now', 'the bales are tighter now'],
    readBack: 'The bales got heavier.',
  },
  'finding.balesSame': {
    risk: 'answer',
    forms: ['about the same as before', 'the bales are about the same'],
    readBack: 'The bales are about the same.',
  },
  'finding.slipsEasily': {
    risk: 'answer',
    forms: ['it slips out too easily', 'it slips too easily', 'it pulls out too easy'],
    readBack: 'It slips too easily.',
  },
  'finding.holdsEven': {
    risk: 'answer',
    forms: ['both sides hold the same', 'they hold about the same'],
    readBack: 'Both sides hold the same.',
  },
  'finding.holdsTooTight': {
    risk: 'answer',
    forms: ['it holds far too tight', "it's a lot tighter than the other"],
    readBack: 'It holds far too tight.',
  },
  'finding.grooved': {
    risk: 'answer',
    forms: ['my fingernail catches in a groove', "it's grooved and worn", "it's worn with a groove"],
    readBack: 'Grooved.',
  },
  'finding.smooth': {
    risk: 'answer',
    forms: ["it's smooth all the way over", "it's smooth with sharp notches", 'it feels smooth'],
    readBack: 'Smooth.',
  },
  'finding.dragsHard': {
    risk: 'answer',
    forms: ['that string drags a lot harder', 'the bad side drags harder'],
    readBack: 'The string drags too hard.',
  },
  'finding.dragsEven': {
    risk: 'answer',
    forms: ['both strings pull about even', 'the strings pull about even'],
    readBack: 'Both strings pull the same.',
  },
  'finding.stopsShort': {
    risk: 'answer',
    forms: ['the notch stops short of the holder', 'the notch stops short'],
    readBack: 'The disc stops short.',
  },
  'finding.onTheMark': {
    risk: 'answer',
    forms: ['it came right back to the mark', 'it lines up with the mark'],
    readBack: 'It stops on the mark.',
  },
  'finding.slackInString': {
    risk: 'answer',
    forms: ['a loop of twine hangs slack', 'the twine hangs slack'],
    readBack: 'The twine hangs slack.',
  },
  'finding.stringTaut': {
    risk: 'answer',
    forms: ['it runs straight and tight', "it's straight and tight"],
    readBack: 'The twine runs straight.',
  },
  'finding.dogsStuck': {
    risk: 'answer',
    forms: ['one of the dogs is stuck or gone', 'a hay dog is stuck', 'a hay dog is missing'],
    readBack: 'A hay dog is stuck or missing.',
  },
  'finding.dogsEven': {
    risk: 'answer',
    forms: ["they're all in place and even", 'all in place and even'],
    readBack: 'The hay dogs are in place.',
  },
  'finding.strawInTheWay': {
    risk: 'answer',
    forms: ['straw is lying in the way', "there's straw in the way"],
    readBack: 'Straw is in the way.',
  },
  'finding.pathClear': {
    risk: 'answer',
    forms: ['the path is open and clear', "it's open and clear"],
    readBack: 'The path is clear.',
  },
  'finding.bent': {
    risk: 'answer',
    forms: ["it's bent out of shape", "it's bent or worn down"],
    readBack: 'Bent.',
  },
  'finding.looksAlike': {
    risk: 'answer',
    forms: ['it matches the other side exactly', 'they look exactly alike'],
    readBack: 'It matches the other side.',
  },
  'finding.bothAcross': {
    risk: 'answer',
    forms: ['both strings lie over the billhook', 'both lie over the billhook'],
    readBack: 'Both strands lie over the billhook.',
  },
  'finding.fingerFallsShort': {
    risk: 'answer',
    forms: ['the finger falls short of the twine', 'the finger falls short'],
    readBack: 'The finger falls short.',
  },
  'finding.notchLate': {
    risk: 'answer',
    forms: ['the notch comes round too late', 'the notch is too late'],
    readBack: 'The notch comes too late.',
  },
  'finding.needleToOneSide': {
    risk: 'answer',
    forms: ['the needle comes up to one side', 'it comes up to one side'],
    readBack: 'The needle is off to one side.',
  },
  'finding.wobbles': {
    risk: 'answer',
    forms: ["it's loose and it wobbles", 'it wobbles about'],
    readBack: 'Loose.',
  },
  'finding.firm': {
    risk: 'answer',
    forms: ['it stays firm and tight', "it's firm and tight"],
    readBack: 'Firm.',
  },
  'finding.rough': {
    risk: 'answer',
    forms: ["it's rusty or sticky or rough", "it's rusty and rough", "it's sticky with sap"],
    readBack: 'Rough.',
  },
  'finding.lightShows': {
    risk: 'answer',
    forms: ['daylight shows at the tip', 'i see light at the tip'],
    readBack: 'Light shows at the tip.',
  },
  'finding.closesUp': {
    risk: 'answer',
    forms: ['it closes up all the way', 'it shuts all the way'],
    readBack: 'It closes.',
  },
  'finding.bladeDull': {
    risk: 'answer',
    forms: ['the blade is dull or nicked', "it's dull and nicked"],
    readBack: 'The knife is dull.',
  },
  'finding.bladeKeen': {
    risk: 'answer',
    forms: ["it's sharp from end to end", 'sharp from end to end'],
    readBack: 'The knife is sharp.',
  },
  'finding.liftsEasily': {
    risk: 'answer',
    forms: ['the tongue lifts far too easily', 'it lifts too easily'],
    readBack: 'The tongue lifts too easily.',
  },
  'finding.liftsEven': {
    risk: 'answer',
    forms: ['both tongues feel about the same', 'both feel about the same'],
    readBack: 'Both tongues lift the same.',
  },
  'finding.liftsHard': {
    risk: 'answer',
    forms: ['the spring is stiff and strong', "it's too stiff to lift"],
    readBack: 'The tongue is too stiff.',
  },
  'finding.cutsEarly': {
    risk: 'answer',
    forms: ['the knife cuts before the tongue shuts', 'it cuts too early'],
    readBack: 'The knife cuts too early.',
  },
  'finding.billhookPartWay': {
    risk: 'answer',
    forms: ['the billhook goes only part way round', 'it goes only part way round'],
    readBack: 'The billhook does not go right round.',
  },
  'finding.neverReachesBillhook': {
    risk: 'answer',
    forms: ['the strings pass clear of the billhook', 'they pass clear of it'],
    readBack: 'The strands pass clear of the billhook.',
  },
  'finding.inOrder': {
    risk: 'answer',
    forms: ['everything works in the right order', 'all in the right order'],
    readBack: 'Everything works in order.',
  },
  'finding.stringLoose': {
    risk: 'answer',
    forms: ['the string is loose around the bale', 'i can get my hand under it'],
    readBack: 'The string is loose on the bale.',
  },
  'finding.stringSnug': {
    risk: 'answer',
    forms: ['it sits tight against the hay', "it's tight against the hay"],
    readBack: 'The string is tight on the bale.',
  },
  'finding.twineDifferent': {
    risk: 'answer',
    forms: ['a different sort of twine', "it's another kind of twine", "it's a new batch of twine"],
    readBack: 'The twine is different.',
  },
  'finding.twineUsual': {
    risk: 'answer',
    forms: ['the same as i always use', 'same as we always use'],
    readBack: 'The twine is the usual one.',
  },
  'finding.wiperClear': {
    risk: 'answer',
    forms: ['the wiper never touches it', "there's a gap at the wiper"],
    readBack: 'The wiper does not touch.',
  },
  'finding.wiperRubs': {
    risk: 'answer',
    forms: ['it rubs lightly all the way', 'it rubs lightly'],
    readBack: 'The wiper rubs lightly.',
  },
  'finding.wiperGouges': {
    risk: 'answer',
    forms: ['it scrapes hard and leaves a gouge', 'it scrapes too hard'],
    readBack: 'The wiper scrapes too hard.',
  },
  'finding.armFallsShort': {
    risk: 'answer',
    forms: ['the arm falls short of the tip', 'the arm falls short'],
    readBack: 'The arm falls short.',
  },
  'finding.armGoesPast': {
    risk: 'answer',
    forms: ['it goes well past the end', 'it goes well past'],
    readBack: 'The arm goes past the tip.',
  },
  'finding.twineWeaker': {
    risk: 'answer',
    forms: ['this one snaps a lot easier', 'the old one snaps easier'],
    readBack: 'This twine is weaker.',
  },
  'finding.twineStrong': {
    risk: 'answer',
    forms: ["they're both as hard to break", 'both as hard to break'],
    readBack: 'This twine is as strong as new.',
  },
  'finding.brokeAtKnot': {
    risk: 'answer',
    forms: ['it gave way right at the knot', 'it broke right at the knot'],
    readBack: 'It broke at the knot.',
  },
  'finding.pulledApart': {
    risk: 'answer',
    forms: ['the knot slid itself undone', 'the tails pulled through'],
    readBack: 'The knot slid undone.',
  },
  'finding.cutInOnePlace': {
    risk: 'answer',
    forms: ['always cut in the same place', "it's cut in the same place"],
    readBack: 'It is cut in the same place every time.',
  },
  'finding.brokeAnywhere': {
    risk: 'answer',
    forms: ['anywhere along its length', 'it broke anywhere along it'],
    readBack: 'It broke anywhere along the string.',
  },
  'finding.tailsShort': {
    risk: 'answer',
    forms: ['the tails are far too short', "they're far too short"],
    readBack: 'The tails are too short.',
  },
  'finding.tailsLong': {
    risk: 'answer',
    forms: ['both ends are good and long', 'good and long'],
    readBack: 'The tails are long enough.',
  },
  'finding.oneSideLooser': {
    risk: 'answer',
    forms: ['one string is a lot looser', 'one is a lot looser'],
    readBack: 'One string is looser.',
  },
  'finding.sidesAlike': {
    risk: 'answer',
    forms: ['the two of them feel equal', 'they feel equal'],
    readBack: 'Both strings are alike.',
  },
  'finding.snags': {
    risk: 'answer',
    forms: ['the cotton snags and catches', 'it snags and catches'],
    readBack: 'It snags.',
  },
  'finding.slidesFree': {
    risk: 'answer',
    forms: ['it slides along freely', 'it slides freely'],
    readBack: 'It slides freely.',
  },
  'finding.ranOut': {
    risk: 'answer',
    forms: ['the ball ran out or fell in', 'a ball ran out', 'a ball fell in'],
    readBack: 'A ball ran out or fell in.',
  },
  'finding.twineSpoilt': {
    risk: 'answer',
    forms: ['the twine is wet or chewed', "it's wet or chewed"],
    readBack: 'The twine is spoilt.',
  },
  'finding.ballsGood': {
    risk: 'answer',
    forms: ["they're all full and standing", 'all full and standing'],
    readBack: 'The balls are good.',
  },
  'finding.spliceLumpy': {
    risk: 'answer',
    forms: ['the splice is big and lumpy', "it's big and lumpy"],
    readBack: 'The splice is lumpy.',
  },
  'finding.spliceNeat': {
    risk: 'answer',
    forms: ['small and tidy with trimmed ends', "it's small and tidy"],
    readBack: 'The splice is neat.',
  },
  'finding.noSplice': {
    risk: 'answer',
    forms: ['it broke nowhere near a join', 'nowhere near a join'],
    readBack: 'There is no splice near the break.',
  },
  'finding.routeWrong': {
    risk: 'answer',
    forms: ['it skips a guide or crosses over', 'it skips a guide', 'the strings cross over'],
    readBack: 'The route is wrong.',
  },
  'finding.routeRight': {
    risk: 'answer',
    forms: ['it follows the proper way', 'it goes the proper way'],
    readBack: 'The route is right.',
  },
  'finding.twineUneven': {
    risk: 'answer',
    forms: ['thick in places and thin in others', "it's thick and thin"],
    readBack: 'The twine is uneven.',
  },
  'finding.twineEven': {
    risk: 'answer',
    forms: ["it's even along all of it", 'even along all of it'],
    readBack: 'The twine is even.',
  },
  'finding.rubMarks': {
    risk: 'answer',
    forms: ['there are bright rub marks', 'i see bright rub marks'],
    readBack: 'There are rub marks.',
  },
  'finding.stiffWithRust': {
    risk: 'answer',
    forms: ['the arm is bent or stiff with rust', "it's stiff with rust"],
    readBack: 'The arm is bent or stiff.',
  },
  'finding.teethWorn': {
    risk: 'answer',
    forms: ['the teeth are worn or bent', 'worn or bent teeth'],
    readBack: 'The teeth are worn.',
  },
  'finding.collarSlipped': {
    risk: 'answer',
    forms: ['the collar has slipped along', 'it has slipped along'],
    readBack: 'The collar slipped.',
  },
  'finding.marksLineUp': {
    risk: 'answer',
    forms: ['the marks still line up', 'they still line up'],
    readBack: 'The marks line up.',
  },
  'finding.driveBroken': {
    risk: 'answer',
    forms: ['the chain is off or a bolt is gone', 'the chain is off', 'a bolt is gone'],
    readBack: 'The drive is broken.',
  },
  'finding.pawlRounded': {
    risk: 'answer',
    forms: ['the nose is worn off round', "it's worn off round"],
    readBack: 'The pawl is worn.',
  },
  'finding.pawlSticks': {
    risk: 'answer',
    forms: ["it sticks and won't throw out", "it won't throw out"],
    readBack: 'The pawl sticks.',
  },
  'finding.pawlSquare': {
    risk: 'answer',
    forms: ['square and free with a good spring', "it's square and free"],
    readBack: 'The pawl is good.',
  },
  'finding.liningWorn': {
    risk: 'answer',
    forms: ['the lining is thin or oily', "it's thin or oily"],
    readBack: 'The lining is worn or oily.',
  },
  'finding.liningGood': {
    risk: 'answer',
    forms: ['dry with plenty of it left', 'plenty of it left'],
    readBack: 'The lining is good.',
  },
  'finding.needlesDrift': {
    risk: 'answer',
    forms: ['the needles have crept away', 'they have crept away'],
    readBack: 'The needles creep from home.',
  },
  'finding.needlesStay': {
    risk: 'answer',
    forms: ['they rest where they belong', "they're where they belong"],
    readBack: 'The needles rest at home.',
  },
  'finding.jammedIn': {
    risk: 'answer',
    forms: ['a lump is jammed in the slot', "there's a lump in the slot"],
    readBack: 'Something is jammed in.',
  },
  'finding.driveWorkedOn': {
    risk: 'answer',
    forms: ['the chain or gears were worked on', 'it was taken apart'],
    readBack: 'The drive was worked on.',
  },
  'finding.nothingChanged': {
    risk: 'answer',
    forms: ['not touched since it ran well', 'nobody touched it'],
    readBack: 'Nothing was changed.',
  },
  'finding.stickingOut': {
    risk: 'answer',
    forms: ["it's sticking out in the slot", "it's sticking out"],
    readBack: 'The catch is sticking out.',
  },
  'finding.drawnBack': {
    risk: 'answer',
    forms: ["it's drawn all the way back", 'drawn all the way back'],
    readBack: 'The catch is drawn back.',
  },
  'finding.windrowUneven': {
    risk: 'answer',
    forms: ['the rows are lumpy or damp', 'lumpy and damp'],
    readBack: 'The windrow is uneven.',
  },
  'finding.windrowEven': {
    risk: 'answer',
    forms: ["it's dry and even all along", 'dry and even all along'],
    readBack: 'The windrow is even.',
  },
  'finding.speedWanders': {
    risk: 'answer',
    forms: ['the speed wanders up and down', 'it wanders up and down'],
    readBack: 'The speed wanders.',
  },
  'finding.speedSteady': {
    risk: 'answer',
    forms: ['it holds steady all day', 'it holds steady'],
    readBack: 'The speed is steady.',
  },
  'finding.faceRagged': {
    risk: 'answer',
    forms: ['ragged with stems folded over', "it's ragged and folded"],
    readBack: 'The bale side is ragged.',
  },
  'finding.faceCut': {
    risk: 'answer',
    forms: ['the side is cut off flat', "it's cut off flat"],
    readBack: 'The bale side is cut clean.',
  },
  'finding.holdsWell': {
    risk: 'answer',
    forms: ['a good firm hold on each', 'they hold good and firm'],
    readBack: 'Both hold well.',
  },
  'finding.nearTheLimit': {
    risk: 'answer',
    forms: ['several are close to the limit', 'several are nearly worn out'],
    readBack: 'Several parts are near the limit.',
  },
  'finding.wellInside': {
    risk: 'answer',
    forms: ["they're all well inside it", 'all well inside it'],
    readBack: 'All parts are well inside.',
  },
});
