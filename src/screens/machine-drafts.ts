import type { InputId } from '../../flows/figures-asked/inputs.ts';
import { inputOf } from '../../flows/figures-asked/inputs.ts';
import { type FigureValues, isPossible } from '../../flows/figures-asked/values.ts';
import {
  findingsOf,
  MACHINE_VALUE_IDS,
  MACHINE_VALUES,
  type MachineBand,
  type MachineValueId,
  measureOf,
  troubleWith,
} from '../../flows/machine-values.ts';
import type { UnitId } from '../../grammar/measurements.ts';
import type { ManualValue } from '../records/machine.ts';

/** Limits of a machine as they are being typed; nothing typed at all means there are none. */
export interface LimitDraft {
  readonly amounts: readonly string[];
  readonly unit: UnitId;
  readonly source: string;
}

/** A value of its manual as it is being typed. */
export interface ManualDraft {
  readonly name: string;
  readonly amount: string;
  readonly unit: string;
  readonly source: string;
}

export const BLANK_MANUAL: ManualDraft = { name: '', amount: '', unit: '', source: '' };

/** What typed text comes to: a value, nothing, or one sentence on why it cannot be kept. */
export type Drafted<T> =
  | { readonly kind: 'none' }
  | { readonly kind: 'value'; readonly value: T }
  | { readonly kind: 'trouble'; readonly sentence: string };

/** The values that figures ask for and that stay the same for a machine. */
export const KEPT_INPUTS = [
  'baleLength',
  'baleHeight',
  'baleWidth',
  'baleWeight',
  'labelLength',
  'balls',
  'runnage',
  'knotStrength',
  'strokesPerBale',
  'strokesPerMinute',
  'notches',
  'crankRadius',
  'rodLength',
  'chainPitch',
] as const satisfies readonly InputId[];

export type KeptInput = (typeof KEPT_INPUTS)[number];

export type LimitDrafts = Readonly<Record<MachineValueId, LimitDraft>>;
export type FigureDrafts = Readonly<Record<KeptInput, string>>;

export function limitDraftsOf(bands: readonly MachineBand[]): LimitDrafts {
  return fromIds(MACHINE_VALUE_IDS, (id) => {
    const own = bands.findLast(({ of }) => of === id);
    return {
      amounts: findingsOf(id)
        .slice(1)
        .map((_, at) => String(own?.limits[at]?.amount ?? '')),
      unit: own?.limits[0]?.unit ?? measureOf(id).plausible.high.unit,
      source: own?.source ?? '',
    };
  });
}

export function figureDraftsOf(figures: FigureValues): FigureDrafts {
  return fromIds(KEPT_INPUTS, (id) => String(figures[id] ?? ''));
}

/** The machine's own band as typed. */
export function bandOf(of: MachineValueId, { amounts, unit, source }: LimitDraft): Drafted<MachineBand> {
  if (amounts.every((amount) => amount.trim() === '') && source.trim() === '') return { kind: 'none' };
  const { name } = MACHINE_VALUES[of];
  const limits = amounts.map((amount) => ({ amount: numberIn(amount), unit }));
  if (limits.some(({ amount }) => Number.isNaN(amount))) {
    return { kind: 'trouble', sentence: `${name}: every field of it takes a number.` };
  }
  const [trouble] = troubleWith({ of, limits });
  if (trouble) return { kind: 'trouble', sentence: `${name}: ${trouble}` };
  if (source.trim() === '') {
    return { kind: 'trouble', sentence: `${name}: say where it comes from, such as a page of the manual.` };
  }
  return { kind: 'value', value: { of, limits, source: source.trim() } };
}

/** Values of its manual as typed, or the first trouble. One with nothing typed is left out. */
export function manualValuesOf(drafts: readonly ManualDraft[]): Drafted<readonly ManualValue[]> {
  const values: ManualValue[] = [];
  for (const draft of drafts) {
    const value = manualValueOf(draft);
    if (value.kind === 'trouble') return value;
    if (value.kind === 'value') values.push(value.value);
  }
  return { kind: 'value', value: values };
}

function manualValueOf(draft: ManualDraft): Drafted<ManualValue> {
  const [name, unit, source] = [draft.name.trim(), draft.unit.trim(), draft.source.trim()];
  if ([name, draft.amount.trim(), unit, source].every((text) => text === '')) return { kind: 'none' };
  if (name === '') return { kind: 'trouble', sentence: 'A value of its manual needs a name.' };
  const amount = numberIn(draft.amount);
  if (Number.isNaN(amount)) {
    return { kind: 'trouble', sentence: `${name}: its value has to be a number that is not below zero.` };
  }
  if (unit === '') {
    return { kind: 'trouble', sentence: `${name}: say in what unit, such as millimetres or turns.` };
  }
  if (source === '') {
    return { kind: 'trouble', sentence: `${name}: say where it comes from, such as a page of the manual.` };
  }
  return { kind: 'value', value: { name, amount, unit, source } };
}

/** A value that figures need, as typed, in the unit of its label. */
export function figureValueOf(id: KeptInput, typed: string): Drafted<number> {
  if (typed.trim() === '') return { kind: 'none' };
  const { name, takes } = inputOf(id);
  const value = numberIn(typed);
  if (isPossible(takes, value)) return { kind: 'value', value };
  const span = 'quantity' in takes ? ` It has to be ${takes.quantity.low} to ${takes.quantity.high}.` : '';
  return { kind: 'trouble', sentence: `${name} ${typed.trim()} cannot be.${span}` };
}

/** All of them together, or the first trouble. */
export function machineNumbers(
  limits: LimitDrafts,
  figures: FigureDrafts,
): Drafted<{ readonly bands: readonly MachineBand[]; readonly figures: FigureValues }> {
  const bands: MachineBand[] = [];
  for (const id of MACHINE_VALUE_IDS) {
    const band = bandOf(id, limits[id]);
    if (band.kind === 'trouble') return band;
    if (band.kind === 'value') bands.push(band.value);
  }
  const kept: Partial<Record<KeptInput, number>> = {};
  for (const id of KEPT_INPUTS) {
    const value = figureValueOf(id, figures[id]);
    if (value.kind === 'trouble') return value;
    if (value.kind === 'value') kept[id] = value.value;
  }
  return { kind: 'value', value: { bands, figures: kept } };
}

/** A number with a point or a comma before its decimals. */
function numberIn(typed: string): number {
  const plain = typed.trim().replace(',', '.');
  return /^\d+(\.\d+)?$/.test(plain) ? Number(plain) : Number.NaN;
}

function fromIds<Id extends string, T>(ids: readonly Id[], make: (id: Id) => T): Readonly<Record<Id, T>> {
  return Object.fromEntries(ids.map((id) => [id, make(id)])) as Record<Id, T>;
}
