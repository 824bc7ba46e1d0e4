/** Measurements and counts as people say them, with what is asked for where they are said. */
import type { ExpectedValue } from '../../grammar/expecting.ts';
import type { Dimension } from '../../grammar/measurements.ts';

const measured = (dimension: Dimension, texts: readonly string[]) =>
  texts.map((text) => ({ text, value: { kind: 'measurement', dimension } as const }));

export const spokenValues: readonly { readonly text: string; readonly value: ExpectedValue }[] = [
  ...measured('length', [
    'two inches',
    'half an inch',
    'three quarters of an inch',
    'one and a half inches',
    'seven sixteenths of an inch',
    'five eighths of an inch',
    'twelve millimeters',
    'thirty five millimeters',
  ]),
  ...measured('force', ['forty pounds', 'twenty five pounds', 'sixty newtons', 'a hundred pounds']),
  ...measured('rotation', ['two turns', 'three turns', 'one and a half turns']),
  ...['five out of fifty', 'two out of a hundred', 'one out of ten', 'three out of forty'].map((text) => ({
    text,
    value: { kind: 'missCount' } as const,
  })),
];
