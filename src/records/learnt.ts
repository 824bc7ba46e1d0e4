import { effect, type Signal, signal } from '@preact/signals';
import {
  type Counts,
  counted,
  exportedCounts,
  type LoggedJob,
  NOTHING_LEARNT,
  readCounts,
} from '../../flows/diagnosis/learning.ts';
import type { JobContext } from '../../flows/job-context.ts';

/** What this tablet has learnt from its own closed jobs, and whether somebody chose to use it. */
export interface Learnt {
  readonly counts: Counts;
  readonly isUsed: boolean;
}

const NOTHING: Learnt = { counts: NOTHING_LEARNT, isUsed: false };

const PLACE = 'knotwright.learnt';

/** What was kept, or nothing where it cannot be read: learnt counts can always be built up again. */
export function readLearnt(kept: string | null): Learnt {
  if (kept === null) return NOTHING;
  const [first = '', ...rest] = kept.split('\n');
  const read = readCounts(rest.join('\n'));
  return read.ok ? { counts: read.counts, isUsed: first === 'used' } : NOTHING;
}

/** The tablet's learning: every change is kept where the browser keeps anything at all. */
export function keepLearnt(storage: Pick<Storage, 'getItem' | 'setItem'>): Signal<Learnt> {
  const learnt = signal(readLearnt(safely(() => storage.getItem(PLACE)) ?? null));
  effect(() => {
    const { counts, isUsed } = learnt.value;
    const text = `${isUsed ? 'used' : 'not used'}\n${exportedCounts(counts)}`;
    safely(() => storage.setItem(PLACE, text));
  });
  return learnt;
}

/** What a job teaches once its repair is proved; nothing where no single cause was. */
export function lessonOf({ answers, repairs }: JobContext): LoggedJob | undefined {
  const [proved, ...more] = repairs.filter(({ outcome }) => outcome === 'proved');
  return proved && more.length === 0
    ? { answers, found: { family: proved.family, cause: proved.cause } }
    : undefined;
}

/** The learning with one more job in it. */
export function learntFrom(learnt: Learnt, lesson: LoggedJob): Learnt {
  return { ...learnt, counts: counted(learnt.counts, lesson) };
}

/** Back to the seed estimates. */
export function forgotten(): Learnt {
  return NOTHING;
}

/** A browser that keeps nothing throws on every use of its storage. */
function safely<T>(use: () => T): T | undefined {
  try {
    return use();
  } catch {
    return undefined;
  }
}
