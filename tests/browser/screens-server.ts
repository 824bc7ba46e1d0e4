import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import preact from '@preact/preset-vite';
import { build, preview } from 'vite';

/** The app's screens over an acted conversation, built and served as the app is. */
export interface ScreensServer {
  readonly url: string;
  close(): Promise<void>;
}

const root = join(import.meta.dirname, 'screens-page');
const publicDir = join(import.meta.dirname, '../../public');

/** Builds and serves the pages; close it to remove the build. */
export async function serveScreensPage(): Promise<ScreensServer> {
  const outDir = mkdtempSync(join(tmpdir(), 'screens-page-'));
  const shared = { root, publicDir, base: './', configFile: false, logLevel: 'error' } as const;
  await build({
    ...shared,
    plugins: [preact()],
    build: {
      outDir,
      emptyOutDir: true,
      target: 'es2022',
      rolldownOptions: { input: [join(root, 'index.html'), join(root, 'pictures.html')] },
    },
  });
  const server = await preview({ ...shared, build: { outDir }, preview: { host: '127.0.0.1', port: 0 } });
  const address = server.httpServer.address();
  if (!address || typeof address === 'string') throw new Error('The page of the screens is not served.');
  return {
    url: `http://127.0.0.1:${address.port}/`,
    async close() {
      await server.close();
      rmSync(outDir, { recursive: true, force: true });
    },
  };
}
