import { join } from 'node:path';
import { createServer } from 'vite';

/** The page of the mouth, with the voice folder beside it as in the app. */
export interface MouthServer {
  readonly url: string;
  close(): Promise<void>;
}

const project = join(import.meta.dirname, '../..');

export async function serveMouthPage(): Promise<MouthServer> {
  const server = await createServer({
    root: join(import.meta.dirname, 'mouth-page'),
    publicDir: join(project, 'public'),
    configFile: false,
    logLevel: 'error',
    // Beside the app's own cache, or two servers would overwrite each other's.
    cacheDir: join(project, 'node_modules/.vite-mouth-page'),
    server: { host: '127.0.0.1', port: 0, fs: { allow: [project] }, watch: null, hmr: false },
  });
  await server.listen();
  const address = server.httpServer?.address();
  if (!address || typeof address === 'string') throw new Error('The page of the mouth is not served.');
  return { url: `http://127.0.0.1:${address.port}/`, close: () => server.close() };
}
