import type { WearingPart } from '../records/wear.ts';
import type { Drafted } from './machine-drafts.ts';

/** A part as it is being typed. */
export interface WearDraft {
  readonly name: string;
  readonly limitMm: string;
  readonly limitSource: string;
  readonly from: WearingPart['from'];
  readonly readings: readonly { readonly bales: string; readonly wearMm: string }[];
}

export const BLANK_WEAR: WearDraft = {
  name: '',
  limitMm: '',
  limitSource: '',
  from: 'new at zero',
  readings: [],
};

/** Spans of flows/figures/wear.ts, for what is typed here. */
const MOST_MM = 50;
const LEAST_LIMIT_MM = 0.01;
const MOST_BALES = 10_000_000;

export function wearDraftOf({ limitMm, readings, ...rest }: WearingPart): WearDraft {
  return {
    ...rest,
    limitMm: String(limitMm),
    readings: readings.map(({ bales, wearMm }) => ({ bales: String(bales), wearMm: String(wearMm) })),
  };
}

/** The parts as typed, or the first trouble. A part with nothing typed is left out, and so is an empty reading. */
export function wearingParts(drafts: readonly WearDraft[]): Drafted<readonly WearingPart[]> {
  const parts: WearingPart[] = [];
  for (const draft of drafts) {
    const part = wearingPart(draft);
    if (part.kind === 'trouble') return part;
    if (part.kind === 'value') parts.push(part.value);
  }
  return { kind: 'value', value: parts };
}

function wearingPart({ name, limitMm, limitSource, from, readings }: WearDraft): Drafted<WearingPart> {
  const typed = readings.filter(({ bales, wearMm }) => bales.trim() !== '' || wearMm.trim() !== '');
  if ([name, limitMm, limitSource].every((text) => text.trim() === '') && typed.length === 0) {
    return { kind: 'none' };
  }
  if (name.trim() === '') return trouble('A wearing part needs a name.');
  const limit = numberIn(limitMm);
  if (!(limit >= LEAST_LIMIT_MM && limit <= MOST_MM)) {
    return trouble(`${name}: its limit has to be ${LEAST_LIMIT_MM} to ${MOST_MM} millimetres.`);
  }
  if (limitSource.trim() === '') return trouble(`${name}: say where its limit comes from.`);
  const read = typed.map((reading) => ({ bales: numberIn(reading.bales), wearMm: numberIn(reading.wearMm) }));
  if (read.some(({ bales }) => !(Number.isInteger(bales) && bales >= 0 && bales <= MOST_BALES))) {
    return trouble(`${name}: every reading needs the whole number of bales it was taken at.`);
  }
  if (read.some(({ wearMm }) => !(wearMm >= 0 && wearMm <= MOST_MM))) {
    return trouble(`${name}: a wear reading has to be 0 to ${MOST_MM} millimetres.`);
  }
  return {
    kind: 'value',
    value: { name: name.trim(), limitMm: limit, limitSource: limitSource.trim(), from, readings: read },
  };
}

function trouble(sentence: string): { readonly kind: 'trouble'; readonly sentence: string } {
  return { kind: 'trouble', sentence };
}

/** A number with a point or a comma before its decimals; nothing else is a number here. */
function numberIn(typed: string): number {
  const plain = typed.trim().replace(',', '.');
  return /^\d+(\.\d+)?$/.test(plain) ? Number(plain) : Number.NaN;
}
