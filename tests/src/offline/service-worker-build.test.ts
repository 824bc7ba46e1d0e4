import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shellOf } from '../../../src/offline/service-worker-build.ts';

const FILES = [
  ['index.html', '<html>'],
  ['assets/app-1.js', 'app'],
  ['icons/knot.svg', '<svg>'],
] as const;

describe('the shell of a build', () => {
  it('names every file once, and the page by its folder', () => {
    expect(shellOf(FILES).files).toEqual(['./assets/app-1.js', './icons/knot.svg', './']);
  });

  it('has a version that any change of name or contents changes, and the order does not', () => {
    const { version } = shellOf(FILES);
    expect(shellOf([...FILES].reverse()).version).toBe(version);
    fc.assert(
      fc.property(fc.nat(FILES.length - 1), fc.string({ minLength: 1 }), (at, more) => {
        const renamed = FILES.map(
          ([name, contents], index) => [index === at ? name + more : name, contents] as const,
        );
        const edited = FILES.map(
          ([name, contents], index) => [name, index === at ? contents + more : contents] as const,
        );
        expect(shellOf(renamed).version).not.toBe(version);
        expect(shellOf(edited).version).not.toBe(version);
      }),
    );
  });
});
