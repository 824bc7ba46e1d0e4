import { createActor } from 'xstate';
import { familyById } from '../../../flows/families/all.ts';
import { type Check, FAMILY_IDS } from '../../../flows/families/family.ts';
import { type HeardEvent, isSystemVoid, type JobEvent } from '../../../flows/heard.ts';
import { jobMachine } from '../../../flows/job.ts';
import { type JobSnapshot, type Prompt, promptOf } from '../../../flows/prompt.ts';
import type { MeaningId } from '../../../grammar/lexicon.ts';
import type { LogEntry } from '../../../src/records/log-entry.ts';

/** A minute passes between any two lines, from this moment on. */
export const BEGUN_AT_MS = Date.UTC(2026, 6, 1, 8, 0);
const MINUTE_MS = 60_000;

/** What somebody says to a prompt; undefined ends the job. */
export type Teller = (prompt: Prompt, told: number, snapshot: JobSnapshot) => JobEvent | undefined;

/** The log of a job in which every prompt is answered by the teller. */
export function toldJob(teller: Teller): LogEntry[] {
  const actor = createActor(jobMachine).start();
  const entries: LogEntry[] = [
    entry(0, { event: { type: 'record.started', person: 'RB' }, promptState: 'record' }),
  ];
  for (let told = 0; told < 400; told++) {
    const prompt = promptOf(actor.getSnapshot());
    const event = teller(prompt, told, actor.getSnapshot());
    if (!event) return entries;
    actor.send(event);
    const isSymptom = !isSystemVoid(event) && event.type.startsWith('symptom.');
    entries.push(
      entry(entries.length, {
        event,
        promptState: prompt.state,
        ...(isSymptom ? { heardText: 'it_just_lets_the_string_go' } : {}),
      }),
    );
  }
  throw new Error('The job came to no end.');
}

/** The first answer a prompt offers, the one that leads on; undefined where it offers none. */
export function firstAnswer({ expecting }: Prompt): JobEvent | undefined {
  const [first] = expecting.meanings;
  return first && byVoice(first);
}

/** Where the prompt is a check, the check. */
export function checkAsked({ state }: Prompt): Check | undefined {
  const [, , family, check = ''] = state.split('.');
  const id = FAMILY_IDS.find((each) => each === family);
  return id && familyById(id).checks[check];
}

/** The answer that finds a check in order. */
export function foundInOrder(check: Check): JobEvent | undefined {
  const answer = check.answers.find(({ pointsAtFault }) => !pointsAtFault);
  return answer && byVoice(answer.meaning);
}

export function byVoice(type: MeaningId, slots: HeardEvent['slots'] = {}, margin = 0.9): HeardEvent {
  return { type, slots, channel: { by: 'voice', margin, snrDb: 25 } };
}

function entry(seq: number, told: Pick<LogEntry, 'event' | 'promptState' | 'heardText'>): LogEntry {
  return { ...told, jobId: '3f2a9c41', seq, atMs: BEGUN_AT_MS + seq * MINUTE_MS, tabletId: 'a tablet' };
}
