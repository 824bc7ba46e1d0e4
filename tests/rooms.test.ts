import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

/** The rooms and what each may import: src joins all, audio and flows know only grammar and not each other. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  grammar: ['grammar'],
  flows: ['flows', 'grammar'],
  audio: ['audio', 'grammar'],
  src: ['src', 'audio', 'flows', 'grammar'],
};

const root = resolve(import.meta.dirname, '..');

function sources(room: string): string[] {
  return readdirSync(join(root, room), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name));
}

/** Every module a file names, whether it imports it now, later or for its types alone. */
function imports(file: string): string[] {
  return [
    ...readFileSync(file, 'utf8').matchAll(/(?:from\s*|import\s*\(?\s*|new URL\(\s*)'([^']+)'/g),
  ].flatMap(([, name]) => name ?? []);
}

describe.each(Object.entries(MAY_IMPORT))('%s', (room, allowed) => {
  it(`imports only from ${allowed.join(', ')}`, () => {
    const strays = sources(room).flatMap((file) =>
      imports(file)
        .filter((name) => name.startsWith('.'))
        .map((name) => relative(root, resolve(file, '..', name)))
        .filter((target) => !allowed.includes(target.split('/')[0] ?? ''))
        .filter((target) => !target.startsWith('public/'))
        .map((target) => `${relative(root, file)} imports ${target}`),
    );
    expect(strays).toEqual([]);
  });
});

it('one file imports the recogniser', () => {
  const importers = Object.keys(MAY_IMPORT)
    .flatMap(sources)
    .filter((file) => imports(file).some((name) => name.startsWith('vosk-browser')));
  expect(importers.map((file) => relative(root, file))).toEqual(['audio/ears/recogniser.ts']);
});
