import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, type PreviewServer, preview } from 'vite';

/** The page of the ears, built as the app is built and served as it is served. */
export interface EarsServer {
  readonly url: string;
  close(): Promise<void>;
}

const root = join(import.meta.dirname, 'ears-page');
const publicDir = join(import.meta.dirname, '../../public');

/** Builds and serves the page; close it to remove the build. */
export async function serveEarsPage(): Promise<EarsServer> {
  const outDir = mkdtempSync(join(tmpdir(), 'ears-page-'));
  const shared = { root, publicDir, base: './', configFile: false, logLevel: 'error' } as const;
  await build({
    ...shared,
    build: { outDir, emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 6000 },
  });
  const server: PreviewServer = await preview({
    ...shared,
    build: { outDir },
    // Any host name, for the test of an address that is not secure.
    preview: { host: '127.0.0.1', port: 0, allowedHosts: true },
  });
  const address = server.httpServer.address();
  if (address === null || typeof address === 'string') throw new Error('The page of the ears is not served.');
  return {
    url: `http://127.0.0.1:${address.port}/`,
    async close() {
      await server.close();
      rmSync(outDir, { recursive: true, force: true });
    },
  };
}
