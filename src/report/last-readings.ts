import { FAMILY_IDS } from '../../flows/families/family.ts';
import { MACHINE_VALUES, type MachineValueId, machineValueOf } from '../../flows/machine-values.ts';
import type { Measurement } from '../../grammar/measurements.ts';
import type { Side } from '../../grammar/sides.ts';
import type { LogEntry } from '../records/log-entry.ts';
import { retrace } from '../records/replay.ts';
import { datedAnswers } from './findings.ts';
import { measurementText, momentText } from './words.ts';

/** A value as it was measured last on a machine. */
export interface LastReading {
  readonly of: MachineValueId;
  readonly measurement: Measurement;
  /** The side the job was about, where it was one. */
  readonly side?: Side;
  readonly atMs: number;
}

/**
 * What was measured last of everything that is measured on a machine.
 * @param logs of its jobs, the newest job first, each in order
 */
export function lastReadings(logs: readonly (readonly LogEntry[])[]): readonly LastReading[] {
  const last = new Map<MachineValueId, LastReading>();
  for (const reading of logs.flatMap((log) => readingsOf(log).toReversed())) {
    if (!last.has(reading.of)) last.set(reading.of, reading);
  }
  return [...last.values()].toSorted((a, b) => b.atMs - a.atMs);
}

/** In the order they were taken. */
function readingsOf(log: readonly LogEntry[]): readonly LastReading[] {
  const steps = [...retrace(log)];
  const side = steps.at(-1)?.after.context.side;
  return datedAnswers(steps).flatMap(({ answer, atMs }) => {
    const [kind, first, check = ''] = answer.question.split('.');
    const family = FAMILY_IDS.find((id) => id === first);
    const of = kind === 'check' && family ? machineValueOf({ family, check }) : undefined;
    if (!of || !answer.measurement) return [];
    return [{ of, measurement: answer.measurement, atMs, ...(side ? { side } : {}) }];
  });
}

/** "Pull that lifts the billhook tongue, left knotter: 12 lbf, 25 Nov 2026, 13:52" */
export function readingText({ of, measurement, side, atMs }: LastReading): string {
  const where = side ? `, ${side} knotter` : '';
  return `${MACHINE_VALUES[of].name}${where}: ${measurementText(measurement)}, ${momentText(atMs)}`;
}
