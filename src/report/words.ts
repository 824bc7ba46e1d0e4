import type { Measurement, UnitId } from '../../grammar/measurements.ts';

/** Unit signs as they stand in print (NIST SP 811; "thou" and "turn" are spoken words of the trade). */
const UNIT_SIGNS: Readonly<Record<UnitId, string>> = {
  inch: 'in',
  foot: 'ft',
  thou: 'thou',
  metre: 'm',
  millimetre: 'mm',
  poundForce: 'lbf',
  newton: 'N',
  kilogramForce: 'kgf',
  pound: 'lb',
  kilogram: 'kg',
  turn: 'turn',
  metrePerKilogram: 'm/kg',
  footPerPound: 'ft/lb',
};

/** Numbers as they were given, to a hundredth; fractions of an inch keep the thousandths that make them exact. */
const AMOUNT = new Intl.NumberFormat('en', { maximumFractionDigits: 5, useGrouping: false });

/** "42 lbf", "0.1875 in". */
export function measurementText({ amount, unit }: Measurement): string {
  return `${AMOUNT.format(amount)} ${UNIT_SIGNS[unit]}`;
}

/** A probability or a rate in print: whole percents, one decimal below ten, never 0 or 100 for what is neither. */
export function percentText(fraction: number): string {
  const percent = fraction * 100;
  if (fraction > 0 && percent < 0.1) return 'under 0.1 %';
  if (fraction < 1 && percent > 99.9) return 'over 99.9 %';
  return `${percent.toFixed(percent < 10 || percent > 99 ? 1 : 0).replace(/\.0$/, '')} %`;
}

/** Date and time that reads the same on both sides of an ocean: "25 Nov 2026, 13:52". */
export function momentText(atMs: number, timeZone?: string): string {
  return new Intl.DateTimeFormat('en-GB', {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    ...(timeZone ? { timeZone } : {}),
  }).format(atMs);
}

/** Time to the second, for the lockout log. */
export function timeText(atMs: number, timeZone?: string): string {
  return new Intl.DateTimeFormat('en-GB', {
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
    ...(timeZone ? { timeZone } : {}),
  }).format(atMs);
}

/** The first letter large and a full stop at the end. */
export function sentence(text: string): string {
  const trimmed = text.trim();
  const closed = /[.?!]$/.test(trimmed) ? trimmed : `${trimmed}.`;
  return closed.charAt(0).toUpperCase() + closed.slice(1);
}
