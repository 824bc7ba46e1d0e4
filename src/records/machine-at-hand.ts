import type { FigureValues } from '../../flows/figures-asked/values.ts';
import { aboutOf } from './job-header.ts';
import type { LogEntry } from './log-entry.ts';
import type { MachineProfile } from './machine.ts';
import type { Records } from './records.ts';
import type { Kept } from './trouble.ts';

/** The machine a job is about, as it is known now; undefined where none was named or none can be read. */
export async function machineOf(
  records: Kept<Records>,
  entries: readonly LogEntry[],
): Promise<MachineProfile | undefined> {
  const wanted = aboutOf(entries).machineId;
  if (!records.ok || !wanted) return undefined;
  const machines = await records.value.machines();
  return machines.ok ? machines.value.find(({ machineId }) => machineId === wanted)?.profile : undefined;
}

/** What figures need not ask about a machine. */
export function figuresOf(machine: MachineProfile | undefined): FigureValues {
  if (!machine) return {};
  return {
    ...machine.figures,
    ...(machine.baleCount === undefined ? {} : { balesOnCounter: machine.baleCount }),
  };
}
