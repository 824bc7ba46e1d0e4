import type { FigureValues } from '../../flows/figures-asked/values.ts';
import type { MachineBand } from '../../flows/machine-values.ts';
import type { WearingPart } from './wear.ts';

/** A value from the manual of somebody's own machine that no check measures: free, in their own words. */
export interface ManualValue {
  /** What it is a value of, in their words. */
  readonly name: string;
  readonly amount: number;
  /** As they say it: "pounds", "millimetres", "turns". */
  readonly unit: string;
  /** Page, plate or person it came from. */
  readonly source: string;
}

/** A baler, described in free text by the people who work on it. */
export interface MachineProfile {
  readonly name: string;
  readonly makeAndModel: string;
  readonly serialNumber: string;
  readonly twine: string;
  readonly notes: string;
  /** How it is set: bale density, twine tension, bolts, in their words. Missing in older records. */
  readonly settings?: string;
  /** Reading of the bale counter, where there is one. Whole, 0 or more. */
  readonly baleCount?: number;
  readonly manualValues: readonly ManualValue[];
  /** Limits of its own, which go before the typical ones in every check. Missing in older records. */
  readonly bands?: readonly MachineBand[];
  /** What figures need not ask for: its bales and its twine. Missing in older records. */
  readonly figures?: FigureValues;
  /** Parts whose wear is measured. Missing in older records. */
  readonly wear?: readonly WearingPart[];
}

/**
 * One saved state of a profile. Saving adds a revision and changes none, so the readings of a machine keep their
 * history, and two tablets that both changed it can be brought together by keeping every revision of both.
 */
export interface MachineRevision {
  readonly machineId: string;
  /** One more than the highest the tablet had seen. */
  readonly revision: number;
  readonly tabletId: string;
  readonly savedAtMs: number;
  readonly profile: MachineProfile;
}

/**
 * The revision of every machine that counts now: the highest, and of two equally high ones that of the later tablet
 * id, so that every tablet picks the same.
 */
export function currentRevisions(revisions: readonly MachineRevision[]): readonly MachineRevision[] {
  const current = new Map<string, MachineRevision>();
  for (const each of revisions) {
    const best = current.get(each.machineId);
    if (!best || isLater(each, best)) current.set(each.machineId, each);
  }
  return [...current.values()];
}

function isLater(a: MachineRevision, b: MachineRevision): boolean {
  return a.revision === b.revision ? a.tabletId > b.tabletId : a.revision > b.revision;
}
