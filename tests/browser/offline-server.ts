import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, preview } from 'vite';

/** The app as it is built and served, with a way to change what is served under it. */
export interface BuiltApp {
  readonly url: string;
  /** Rewrites a file of the build, by its path in it. */
  change(file: string, how: (contents: Buffer) => Buffer | string): void;
  close(): Promise<void>;
}

const configFile = join(import.meta.dirname, '../../vite.config.ts');

/** Builds and serves the app; close it to remove the build. */
export async function serveBuiltApp(): Promise<BuiltApp> {
  const outDir = mkdtempSync(join(tmpdir(), 'built-app-'));
  // A test runner's own NODE_ENV would make another app of it than the one that is shipped.
  const { NODE_ENV } = process.env;
  process.env.NODE_ENV = 'production';
  await build({ configFile, logLevel: 'error', build: { outDir, emptyOutDir: true } });
  process.env.NODE_ENV = NODE_ENV;
  const server = await preview({
    configFile,
    logLevel: 'error',
    build: { outDir },
    preview: { host: '127.0.0.1', port: 0 },
  });
  const address = server.httpServer.address();
  if (!address || typeof address === 'string') throw new Error('The app is not served.');
  return {
    url: `http://127.0.0.1:${address.port}/`,
    change(file, how) {
      const path = join(outDir, file);
      writeFileSync(path, how(readFileSync(path)));
    },
    async close() {
      await server.close();
      rmSync(outDir, { recursive: true, force: true });
    },
  };
}
