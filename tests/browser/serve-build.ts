import { cpSync, existsSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, type InlineConfig, preview } from 'vite';

/** A page, built as it is shipped and served on this machine. */
export interface ServedBuild {
  readonly url: string;
  /** Where the build lies until the server is closed. */
  readonly folder: string;
  close(): Promise<void>;
}

/** Names the folder in which a run of the tests keeps its builds, so that each is built once; see `tests/set-up.ts`. */
export const BUILDS_FOLDER = 'KNOTWRIGHT_TEST_BUILDS';

/**
 * Builds a page and serves it at a port of its own. Close it to remove what is nobody else's.
 * @param name of the page, the same only for the same configuration
 * @param isOwn whether the build is to be changed, and so must be nobody else's
 */
export async function serveBuild(
  name: string,
  config: InlineConfig,
  { isOwn = false }: { readonly isOwn?: boolean } = {},
): Promise<ServedBuild> {
  const builds = process.env[BUILDS_FOLDER];
  const shared = builds === undefined ? undefined : await builtOnce(join(builds, name), config);
  const folder = shared !== undefined && !isOwn ? shared : mkdtempSync(join(tmpdir(), `${name}-`));
  if (shared === undefined) await buildInto(folder, config);
  else if (isOwn) cpSync(shared, folder, { recursive: true });
  const server = await preview({
    ...config,
    logLevel: 'error',
    build: { outDir: folder },
    // Any host name, for the test of an address that is not secure.
    preview: { host: '127.0.0.1', port: 0, allowedHosts: true },
  });
  const address = server.httpServer.address();
  if (address === null || typeof address === 'string') throw new Error(`${name} is not served.`);
  return {
    url: `http://127.0.0.1:${address.port}/`,
    folder,
    async close() {
      await server.close();
      if (folder !== shared) rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** The build at that place, made there if nobody has made it yet. */
async function builtOnce(folder: string, config: InlineConfig): Promise<string> {
  if (existsSync(folder)) return folder;
  const unfinished = mkdtempSync(`${folder}-`);
  await buildInto(unfinished, config);
  try {
    renameSync(unfinished, folder);
  } catch (error) {
    // Another test file was faster, or something is wrong.
    rmSync(unfinished, { recursive: true, force: true });
    if (!existsSync(folder)) throw error;
  }
  return folder;
}

async function buildInto(outDir: string, config: InlineConfig): Promise<void> {
  // A test runner's own NODE_ENV would make another page of it than the one that is shipped.
  const { NODE_ENV } = process.env;
  process.env.NODE_ENV = 'production';
  try {
    await build({ ...config, logLevel: 'error', build: { ...config.build, outDir, emptyOutDir: true } });
  } finally {
    if (NODE_ENV === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = NODE_ENV;
  }
}
