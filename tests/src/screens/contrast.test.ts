import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const CSS = readFileSync(new URL('../../../src/app.css', import.meta.url), 'utf8');

/** Colours of a theme by name; shed changes some of day's. */
function colours(theme: 'day' | 'shed'): ReadonlyMap<string, string> {
  const day = CSS.slice(CSS.indexOf(':root {'), CSS.indexOf('}', CSS.indexOf(':root {')));
  const from = CSS.indexOf(':root[data-theme="shed"]');
  const shed = theme === 'shed' ? CSS.slice(from, CSS.indexOf('}', from)) : '';
  return new Map(
    [...`${day}${shed}`.matchAll(/--([\w-]+): (#[0-9a-f]{6});/g)].map(([, name, hex]) => [
      name ?? '',
      hex ?? '',
    ]),
  );
}

/** Contrast ratio as WCAG 2.2 defines it, under "contrast ratio" and "relative luminance". */
function contrast(a: string, b: string): number {
  const [dark, light] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((value) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4)) as [
    number,
    number,
    number,
  ];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

describe('contrast', () => {
  it('is reckoned as WCAG 2.2 has it: 21 for black on white, 4.48 for the grey that just fails 4.5', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
    expect(contrast('#123456', '#123456')).toBe(1);
  });

  it.each(['day', 'shed'] as const)(
    'is 21:1 for the main text and at least 7:1 for everything else, %s',
    (theme) => {
      const named = colours(theme);
      const colour = (name: string) => {
        const found = named.get(name);
        if (!found) throw new Error(`The theme has no colour ${name}.`);
        return found;
      };
      expect(contrast(colour('ink'), colour('paper'))).toBeGreaterThan(20.9);
      const pairs: readonly (readonly [string, string])[] = [
        [colour('ink'), colour('soft')],
        [colour('done'), colour('paper')],
        [colour('here-ink'), colour('here')],
        ['#ffffff', colour('keep-out')],
        ['#000000', colour('stopping')],
        ['#000000', colour('this-step')],
        ['#ffffff', colour('eyes-only')],
        ['#ffffff', colour('rim-only')],
        ['#ffffff', colour('locked-out')],
        ['#ffd400', colour('in-seat')],
        ['#000000', '#d9a441'],
      ];
      for (const [ink, ground] of pairs)
        expect(contrast(ink, ground), `${ink} on ${ground}`).toBeGreaterThanOrEqual(7);
    },
  );
});
