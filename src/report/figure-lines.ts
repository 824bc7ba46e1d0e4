import type { FigureEvent, LogEntry } from '../records/log-entry.ts';
import { asRead } from '../screens/as-read.ts';
import type { FigureLine } from './card.ts';

/** The figures worked out in a job, as they were said then, each only as it stood last. */
export function figureLines(entries: readonly LogEntry[]): readonly FigureLine[] {
  const worked = entries.flatMap(({ atMs, event }) =>
    event.type === 'record.figure' ? [{ atMs, event }] : [],
  );
  return worked
    .filter(({ event }, at) => !worked.slice(at + 1).some((later) => later.event.figure === event.figure))
    .map(({ atMs, event }) => lineOf(atMs, event));
}

function lineOf(atMs: number, { said, granted }: FigureEvent): FigureLine {
  return { atMs, text: asRead(said), granted: [...new Set(granted)] };
}
