import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, type Plugin } from 'vite';
import { PAGE, type Shell } from './shell.ts';

const SOURCE = fileURLToPath(new URL('service-worker.ts', import.meta.url));
const FILE = 'service-worker.js';

/** Files of the public folder that are fetched when they are wanted, each with a check of its own. */
const NOT_SHELL = [/^model\//, /^field-model\//, /\.clips$/, /^storyboard\//];

/** Builds the service worker beside the app, in one file of its own, and writes into it what makes up the shell. */
export function serviceWorker(): Plugin {
  let publicDir = '';
  return {
    name: 'knotwright-service-worker',
    apply: 'build',
    configResolved(config) {
      publicDir = config.publicDir;
    },
    generateBundle: {
      order: 'post',
      async handler(_, bundle) {
        const built = Object.values(bundle).map(
          (file) => [file.fileName, file.type === 'chunk' ? file.code : file.source] as const,
        );
        const shell = shellOf([...built, ...publicFiles(publicDir)]);
        this.emitFile({ type: 'asset', fileName: FILE, source: await workerCode(shell) });
      },
    },
  };
}

async function workerCode(shell: Shell): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    define: { __SHELL__: JSON.stringify(shell) },
    build: {
      write: false,
      target: 'es2022',
      rolldownOptions: { input: SOURCE, output: { format: 'iife' } },
    },
  });
  const [code] = [built].flat().flatMap((result) => ('output' in result ? result.output : []));
  if (code?.type !== 'chunk') throw new Error('The service worker was not built.');
  return code.code;
}

/** The shell of a build. @param files each with its contents; the page itself is kept under its folder's address */
export function shellOf(files: readonly (readonly [name: string, contents: string | Uint8Array])[]): Shell {
  const hash = createHash('sha256');
  const ordered = [...files].sort(([a], [b]) => (a < b ? -1 : 1));
  for (const [name, contents] of ordered) hash.update(name).update('\0').update(contents).update('\0');
  return {
    version: hash.digest('hex').slice(0, 16),
    files: ordered.map(([name]) => (name === 'index.html' ? PAGE : `./${name}`)),
  };
}

function publicFiles(folder: string): (readonly [string, Uint8Array])[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => [relative(folder, path).split(sep).join('/'), path] as const)
    .filter(([name]) => !NOT_SHELL.some((pattern) => pattern.test(name)))
    .map(([name, path]) => [name, readFileSync(path)] as const);
}
