import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { BUILDS_FOLDER } from './browser/serve-build.ts';
import { ensureDebianPackages } from './debian.ts';

/** Runs once before all tests, so that a missing program is one clear line and not a hundred failures. */
export default function setUp(project: TestProject): () => void {
  ensureDebianPackages();
  const builds = mkdtempSync(join(tmpdir(), 'knotwright-builds-'));
  const removeBuilds = () => rmSync(builds, { recursive: true, force: true });
  process.env[BUILDS_FOLDER] = builds;
  project.onTestsRerun(() => {
    removeBuilds();
    mkdirSync(builds);
  });
  return removeBuilds;
}
