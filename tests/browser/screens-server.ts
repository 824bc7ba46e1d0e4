import { join } from 'node:path';
import preact from '@preact/preset-vite';
import { createServer } from 'vite';

/** The app's screens over an acted conversation, with the app's own public files beside them. */
export interface ScreensServer {
  readonly url: string;
  close(): Promise<void>;
}

const project = join(import.meta.dirname, '../..');

export async function serveScreensPage(): Promise<ScreensServer> {
  const server = await createServer({
    root: join(import.meta.dirname, 'screens-page'),
    publicDir: join(project, 'public'),
    configFile: false,
    plugins: [preact({ prefreshEnabled: false })],
    logLevel: 'error',
    // Beside the app's own cache, or two servers would overwrite each other's.
    cacheDir: join(project, 'node_modules/.vite-screens-page'),
    server: { host: '127.0.0.1', port: 0, fs: { allow: [project] }, watch: null, hmr: false },
  });
  await server.listen();
  const address = server.httpServer?.address();
  if (!address || typeof address === 'string') throw new Error('The page of the screens is not served.');
  return { url: `http://127.0.0.1:${address.port}/`, close: () => server.close() };
}
