import { familyById } from '../families/all.ts';
import { type Check, FAMILY_IDS, type FamilyId, SOMETHING_ELSE } from '../families/family.ts';
import { checkQuestion, type QuestionId, repairQuestion } from './answer.ts';
import { type Belief, type Beliefs, REMEDY_FAILS } from './beliefs.ts';
import { HAND_OVER_MINUTES, HAND_TURN_MINUTES, LOCKOUT_MINUTES, PROOF_MINUTES } from './costs.ts';
import { bestOrder, type Inspection } from './inspection-order.ts';

/** One thing that could be done next towards finding the fault. */
interface Trial {
  /** P(it finds the fault), among all explanations. */
  readonly chance: number;
  /** What doing it costs, the lockout included where it is not live. */
  readonly minutes: number;
}

export interface CheckTrial extends Trial {
  readonly family: FamilyId;
  readonly check: string;
}

export interface RepairTrial extends Trial {
  readonly cause: Belief;
}

/** Whether a trial is worth its minutes, against handing the job over. */
export function isWorthDoing({ chance, minutes }: Trial): boolean {
  return chance * HAND_OVER_MINUTES > minutes;
}

/** Chance bought by the minute: the published order for independent costs, used between checks and repairs. */
export function chanceByMinute({ chance, minutes }: Trial): number {
  return chance / minutes;
}

/**
 * The first check of the order with the fewest expected minutes, in the family whose open causes are the most
 * probable among those with checks left. Families of which no belief is given are left out.
 * @param isOpen which checks may still be asked
 */
export function bestCheck(
  beliefs: Beliefs,
  asked: ReadonlySet<QuestionId>,
  lockoutLive: boolean,
  isOpen: (question: QuestionId) => boolean,
): CheckTrial | undefined {
  const family = FAMILY_IDS.map((id) => ({
    id,
    open: Object.entries(familyById(id).checks).filter(([check]) => isOpen(checkQuestion(id, check))),
    causes: openCauses(beliefs, asked).filter((belief) => belief.family === id),
  }))
    .filter(({ open, causes }) => open.length > 0 && causes.length > 0)
    .reduce<FamilySearch | undefined>(
      (best, next) => (best && mass(best) >= mass(next) ? best : next),
      undefined,
    );
  if (!family) return undefined;

  const { id, open, causes } = family;
  const inspections = open.map(([check, data]) => asInspection(check, data, causes));
  const { order } = bestOrder(
    causes.map(({ probability }) => probability),
    inspections,
    lockoutLive ? 0 : LOCKOUT_MINUTES,
  );
  const first = inspections.find((inspection) => inspection.id === order[0]);
  return first && { family: id, check: first.id, ...trialOf(first, causes, lockoutLive) };
}

/** The repair that buys the most chance by the minute, among those worth doing without another look. */
export function bestRepair(
  beliefs: Beliefs,
  asked: ReadonlySet<QuestionId>,
  lockoutLive: boolean,
): RepairTrial | undefined {
  return openCauses(beliefs, asked)
    .map((cause) => repairTrial(cause, lockoutLive))
    .filter((trial) => trial !== undefined)
    .filter(isWorthDoing)
    .reduce<RepairTrial | undefined>(
      (best, next) => (best && chanceByMinute(best) >= chanceByMinute(next) ? best : next),
      undefined,
    );
}

/** The causes on the lists that have not been put right yet. */
export function openCauses(beliefs: Beliefs, asked: ReadonlySet<QuestionId>): Beliefs {
  return beliefs.filter(
    ({ family, cause }) => cause !== SOMETHING_ELSE && !asked.has(repairQuestion(family, cause)),
  );
}

/** The most probable of some explanations; the first on a tie. */
export function likeliest(beliefs: Beliefs): Belief | undefined {
  return beliefs.reduce<Belief | undefined>(
    (best, next) => (best && best.probability >= next.probability ? best : next),
    undefined,
  );
}

interface FamilySearch {
  readonly id: FamilyId;
  readonly open: readonly (readonly [id: string, check: Check])[];
  readonly causes: Beliefs;
}

function mass({ causes }: FamilySearch): number {
  return causes.reduce((sum, { probability }) => sum + probability, 0);
}

function asInspection(id: string, check: Check, causes: Beliefs): Inspection {
  return {
    id,
    minutes: check.minutes + (check.reach === 'handTurn' ? HAND_TURN_MINUTES : 0),
    needsLockout: check.reach !== 'safeStop',
    passes: causes.map(({ cause }) => 1 - chanceToShow(check, cause)),
  };
}

/**
 * P(the check points at this cause | it is the cause). An answer that is no likelier under the cause than
 * without it does not point at it, so a false alarm counts as finding nothing.
 */
export function chanceToShow({ answers }: Check, cause: string): number {
  return answers.reduce((sum, { pointsAtFault, given, otherwise }) => {
    const probability = given[cause] ?? otherwise;
    return pointsAtFault && probability > otherwise ? sum + probability : sum;
  }, 0);
}

function trialOf(
  { minutes, needsLockout, passes }: Inspection,
  causes: Beliefs,
  lockoutLive: boolean,
): Trial {
  return {
    chance: causes.reduce((sum, { probability }, index) => sum + probability * (1 - (passes[index] ?? 1)), 0),
    minutes: minutes + (needsLockout && !lockoutLive ? LOCKOUT_MINUTES : 0),
  };
}

/** Work spent on the true cause is not lost, so a repair costs its minutes only where it was in vain. */
function repairTrial(cause: Belief, lockoutLive: boolean): RepairTrial | undefined {
  const remedy = familyById(cause.family).causes[cause.cause]?.remedy;
  if (!remedy || remedy.refer !== undefined) return undefined;
  const setUp = remedy.reach === 'lockout' && !lockoutLive ? LOCKOUT_MINUTES : 0;
  const chance = cause.probability * (1 - REMEDY_FAILS);
  return { cause, chance, minutes: (1 - chance) * (remedy.minutes + setUp + PROOF_MINUTES) };
}
