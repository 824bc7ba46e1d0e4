import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, type PreviewServer, preview } from 'vite';

/** The app, built as `npm start` builds it and served on this machine. */
export interface AppServer {
  readonly url: string;
  /** Where the build lies until the server is closed. */
  readonly folder: string;
  close(): Promise<void>;
}

const configFile = join(import.meta.dirname, '../../vite.config.ts');

/** Builds into a folder of its own, so that it never meets a build somebody serves. Close it to remove the build. */
export async function serveApp(): Promise<AppServer> {
  const outDir = mkdtempSync(join(tmpdir(), 'knotwright-'));
  const shared = { configFile, logLevel: 'error', build: { outDir, emptyOutDir: true } } as const;
  await build(shared);
  const server: PreviewServer = await preview({ ...shared, preview: { host: '127.0.0.1', port: 0 } });
  const address = server.httpServer.address();
  if (address === null || typeof address === 'string') throw new Error('The app is not served.');
  return {
    folder: outDir,
    url: `http://127.0.0.1:${address.port}/`,
    async close() {
      await server.close();
      rmSync(outDir, { recursive: true, force: true });
    },
  };
}
