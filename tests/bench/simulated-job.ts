import {
  type Answer,
  checkQuestion,
  evidenceQuestion,
  repairQuestion,
} from '../../flows/diagnosis/answer.ts';
import { answerProbability, type Hypothesis, PRIOR_BELIEFS } from '../../flows/diagnosis/beliefs.ts';
import { HAND_TURN_MINUTES, LOCKOUT_MINUTES, PROOF_MINUTES } from '../../flows/diagnosis/costs.ts';
import {
  EVIDENCE,
  type EvidenceId,
  type EvidenceQuestion,
  SYMPTOM_NAMED_RIGHTLY,
} from '../../flows/diagnosis/evidence.ts';
import { type NextStep, nextStep } from '../../flows/diagnosis/next-step.ts';
import { itemAt, seededRandom } from '../../flows/drill/seeded.ts';
import { FAMILIES, familyById } from '../../flows/families/all.ts';
import { type Check, FAMILY_IDS, type Family, SOMETHING_ELSE } from '../../flows/families/family.ts';
import type { MeaningId } from '../../grammar/lexicon.ts';

/** How well the person answers. */
export interface Person {
  /** Share of answers that are not the one the machine gives. */
  readonly wrong: number;
  /** Share of answers that tell nothing. */
  readonly notSure: number;
}

/** Somebody tired and in a hurry. */
export const FALLIBLE: Person = { wrong: 1 / 12, notSure: 1 / 10 };
/** Somebody who always says what the machine shows. */
export const SURE: Person = { wrong: 0, notSure: 0 };

/** Draws from a seeded sequence, so that a bench prints the same figures twice, and whom it is drawn for. */
export interface Dice {
  readonly person: Person;
  /** From 0 up to but not including 1. */
  next(): number;
}

/** What a person says, drawn by seed. */
export function dice(seed: number, person: Person): Dice {
  return { person, next: seededRandom(seed) };
}

/** What a check takes, with the lockout where it is not live yet. */
function minutesOf({ reach, minutes }: Check, locked: boolean): number {
  const setUp = reach !== 'safeStop' && !locked ? LOCKOUT_MINUTES : 0;
  return minutes + setUp + (reach === 'handTurn' ? HAND_TURN_MINUTES : 0);
}

export interface JobOutcome {
  readonly truth: Hypothesis;
  /** How the dialogue ended. */
  readonly end: 'found' | 'referred' | 'handedOver';
  readonly questions: number;
  /** Looking, talking, the lockout once, and repairs of causes that were not the true one. */
  readonly minutes: number;
  /** Causes put right in vain. */
  readonly vainRepairs: number;
}

const OTHERWISE_NAMED = (1 - SYMPTOM_NAMED_RIGHTLY) / (FAMILY_IDS.length - 1);

/** More than any dialogue needs: a search that reaches it is going round. */
const MOST_STEPS = 200;

/** Draws the true cause of a job from the priors. */
export function drawTruth(roll: Dice): Hypothesis {
  return itemAt(
    PRIOR_BELIEFS.map((belief) => [belief, belief.probability] as const),
    roll.next(),
  );
}

/** A whole job through the dialogue, told by somebody who is sometimes wrong and sometimes not sure. */
export function simulatedJob(
  truth: Hypothesis,
  roll: Dice,
  onStep: (step: () => NextStep) => NextStep,
): JobOutcome {
  const answers: Answer[] = [{ question: 'symptom', said: symptomSaid(truth, roll) }];
  let minutes = 0;
  let questions = 1;
  let locked = false;
  let vainRepairs = 0;
  for (let count = 0; count < MOST_STEPS; count += 1) {
    const step = onStep(() => nextStep(answers, locked));
    const done = (end: JobOutcome['end']): JobOutcome => ({ truth, end, questions, minutes, vainRepairs });
    switch (step.kind) {
      case 'open':
        throw new Error('The dialogue opens twice.');
      case 'evidence':
        questions += 1;
        minutes += EVIDENCE[step.question].seconds / 60;
        answers.push({
          question: evidenceQuestion(step.question),
          said: evidenceSaid(step.question, truth, roll),
        });
        break;
      case 'check': {
        const check = checkOf(step.family, step.check);
        questions += 1;
        minutes += minutesOf(check, locked);
        locked ||= check.reach !== 'safeStop';
        answers.push({
          question: checkQuestion(step.family, step.check),
          said: checkSaid(check, step.family === truth.family ? truth.cause : SOMETHING_ELSE, roll),
        });
        break;
      }
      case 'name': {
        const { family, cause } = step;
        const remedy = familyById(family).causes[cause]?.remedy;
        if (family === truth.family && cause === truth.cause) return done('found');
        if (remedy?.refer) return done('referred');
        minutes += (remedy?.minutes ?? 0) + PROOF_MINUTES;
        if (remedy?.reach === 'lockout' && !locked) {
          minutes += LOCKOUT_MINUTES;
          locked = true;
        }
        vainRepairs += 1;
        answers.push({ question: repairQuestion(family, cause), said: 'tie.missed' });
        break;
      }
      case 'handOver':
        return done('handedOver');
    }
  }
  throw new Error(`The dialogue goes round: ${JSON.stringify(answers)}`);
}

/**
 * The same job with a printed list: the family named first, then the others, every check in the order it is
 * printed, until one points at the true cause. What it points at wrongly is put right in vain.
 */
export function manualLookup(truth: Hypothesis, roll: Dice): JobOutcome {
  const said = symptomSaid(truth, roll);
  const named = FAMILIES.find(({ symptom }) => symptom === said);
  const book = named ? [named, ...FAMILIES.filter((family) => family !== named)] : FAMILIES;
  let minutes = 0;
  let questions = 1;
  let locked = false;
  let vainRepairs = 0;
  for (const family of book) {
    const cause = family.id === truth.family ? truth.cause : SOMETHING_ELSE;
    for (const check of Object.values(family.checks)) {
      minutes += minutesOf(check, locked);
      locked ||= check.reach !== 'safeStop';
      questions += 1;
      const found = checkSaid(check, cause, roll);
      const answer = check.answers.find(({ meaning }) => meaning === found);
      if (!answer?.pointsAtFault) continue;
      const blamed = likeliest(family, answer);
      if (blamed === cause) return { truth, end: 'found', questions, minutes, vainRepairs };
      const remedy = family.causes[blamed]?.remedy;
      if (remedy?.refer) return { truth, end: 'referred', questions, minutes, vainRepairs };
      minutes += (remedy?.minutes ?? 0) + PROOF_MINUTES;
      vainRepairs += 1;
    }
  }
  return { truth, end: 'handedOver', questions, minutes, vainRepairs };
}

/** The cause an answer speaks for most. */
function likeliest(family: Family, { given }: Check['answers'][number]): string {
  const share = (cause: string) => (given[cause] ?? 0) * (family.causes[cause]?.prior ?? 0);
  return Object.keys(given).reduce((best, cause) => (share(cause) > share(best) ? cause : best));
}

function symptomSaid({ family }: Hypothesis, roll: Dice): MeaningId {
  return misheard(
    FAMILIES.map(({ symptom }) => symptom),
    itemAt(
      FAMILIES.map(
        ({ id, symptom }) => [symptom, id === family ? SYMPTOM_NAMED_RIGHTLY : OTHERWISE_NAMED] as const,
      ),
      roll.next(),
    ),
    roll,
  );
}

function evidenceSaid(id: EvidenceId, { family }: Hypothesis, roll: Dice): MeaningId {
  const { answers }: EvidenceQuestion = EVIDENCE[id];
  const meanings = answers.map((answer) => answer.meanings[0] ?? 'notSure');
  return misheard(
    meanings,
    itemAt(
      answers.map(({ given }, index) => [meanings[index] ?? 'notSure', given[family]] as const),
      roll.next(),
    ),
    roll,
  );
}

function checkSaid(check: Check, cause: string, roll: Dice): MeaningId {
  const meanings = check.answers.map(({ meaning }) => meaning);
  return misheard(
    meanings,
    itemAt(
      meanings.map((meaning) => [meaning, answerProbability(check, meaning, cause)] as const),
      roll.next(),
    ),
    roll,
  );
}

/** What reaches the record: now and then "not sure", now and then another answer than the true one. */
function misheard(meanings: readonly MeaningId[], truly: MeaningId, roll: Dice): MeaningId {
  const chance = roll.next();
  const { wrong, notSure } = roll.person;
  if (chance < notSure) return 'notSure';
  if (chance >= notSure + wrong) return truly;
  const others = meanings.filter((meaning) => meaning !== truly);
  return others[Math.floor(roll.next() * others.length)] ?? truly;
}

function checkOf(family: Family['id'], id: string): Check {
  const check = familyById(family).checks[id];
  if (!check) throw new Error(`The family ${family} has no check ${id}.`);
  return check;
}
