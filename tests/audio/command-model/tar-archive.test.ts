import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeTar } from '../../../audio/command-model/tar-archive.ts';

describe('the archive', () => {
  // The reference is the system's own tar.
  it('is read by tar, with an entry for every folder before what is in it', () => {
    const folder = mkdtempSync(join(tmpdir(), 'tar-'));
    try {
      const path = join(folder, 'x.tar');
      const content = new TextEncoder().encode('x'.repeat(700));
      writeFileSync(
        path,
        writeTar([
          { path: 'm/a/one', content },
          { path: 'm/b/two', content: new Uint8Array(0) },
        ]),
      );
      const listed = execFileSync('tar', ['-tf', path], { encoding: 'utf8' });
      expect(listed.trim().split('\n')).toEqual(['m/', 'm/a/', 'm/a/one', 'm/b/', 'm/b/two']);
      execFileSync('tar', ['-xf', path, '-C', folder]);
      expect(readFileSync(join(folder, 'm/a/one'), 'utf8')).toBe('x'.repeat(700));
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('refuses a path that a plain entry cannot hold', () => {
    expect(() => writeTar([{ path: 'a'.repeat(101), content: new Uint8Array(0) }])).toThrow(/too long/);
  });
});
