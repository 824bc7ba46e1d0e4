import type { BundledJob } from './bundle.ts';
import type { LogLine } from './log-part.ts';

/** A job of this tablet that an arriving one may be the same as. */
export interface KnownJob {
  readonly id: string;
  readonly entries: readonly LogLine[];
  /** Open for writing now, so nothing may be put under the writer's hands. */
  readonly isBeingWritten: boolean;
}

/** What becomes of an arriving job. */
export type Arrival =
  /** This tablet has all of it. */
  | { readonly kind: 'known' }
  | { readonly kind: 'new' }
  /** It goes on from where a job here stops. */
  | { readonly kind: 'extends'; readonly id: string; readonly from: number }
  /** It went another way than every copy here: both are kept. */
  | { readonly kind: 'besides' };

/**
 * Lays an arriving job beside the copies this tablet has of it. A log only ever grows, so either one is the
 * beginning of the other, or the two went apart.
 * @param copies every job here of the same origin
 */
export function arrivalOf({ entries }: BundledJob, copies: readonly KnownJob[]): Arrival {
  if (copies.length === 0) return { kind: 'new' };
  const arriving = entries.map(canonical);
  const common = copies.map((copy) => ({ copy, same: commonLength(arriving, copy.entries.map(canonical)) }));
  if (common.some(({ same }) => same === arriving.length)) return { kind: 'known' };
  const behind = common.find(({ copy, same }) => same === copy.entries.length && !copy.isBeingWritten);
  return behind ? { kind: 'extends', id: behind.copy.id, from: behind.same } : { kind: 'besides' };
}

function commonLength(a: readonly string[], b: readonly string[]): number {
  const parting = a.findIndex((each, index) => each !== b[index]);
  return parting < 0 ? a.length : parting;
}

/** An entry as text that is the same whatever order its fields were written in, without what a file leaves out. */
function canonical(entry: LogLine): string {
  return JSON.stringify(entry, (key, value: unknown) => {
    if (key === 'jobId' || key === 'seq') return undefined;
    return isPlainObject(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value;
  });
}

function isPlainObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
