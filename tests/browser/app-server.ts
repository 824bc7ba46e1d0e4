import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type ServedBuild, serveBuild } from './serve-build.ts';

const config = { configFile: join(import.meta.dirname, '../../vite.config.ts') };

/** The app, built as `npm start` builds it and served on this machine. */
export function serveApp(): Promise<ServedBuild> {
  return serveBuild('app', config);
}

/** The app with a way to change what is served under it. */
export interface ChangeableApp extends ServedBuild {
  /** Rewrites a file of the build, by its path in it. */
  change(file: string, how: (contents: Buffer) => Buffer | string): void;
}

export async function serveChangeableApp(): Promise<ChangeableApp> {
  const served = await serveBuild('app', config, { isOwn: true });
  return {
    ...served,
    change(file, how) {
      const path = join(served.folder, file);
      writeFileSync(path, how(readFileSync(path)));
    },
  };
}
