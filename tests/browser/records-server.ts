import { join } from 'node:path';
import preact from '@preact/preset-vite';
import { createServer } from 'vite';

export interface RecordsServer {
  readonly url: string;
  close(): Promise<void>;
}

const project = join(import.meta.dirname, '../..');

/** Serves the page of the records, on an origin of its own. */
export async function serveRecordsPage(): Promise<RecordsServer> {
  const server = await createServer({
    root: join(import.meta.dirname, 'records-page'),
    configFile: false,
    logLevel: 'error',
    plugins: [preact()],
    // Beside the app's own cache, or two servers would overwrite each other's.
    cacheDir: join(project, 'node_modules/.vite-records-page'),
    server: { host: '127.0.0.1', port: 0, fs: { allow: [project] }, watch: null, hmr: false },
  });
  await server.listen();
  const address = server.httpServer?.address();
  if (!address || typeof address === 'string') throw new Error('The page of the records is not served.');
  return { url: `http://127.0.0.1:${address.port}/`, close: () => server.close() };
}
