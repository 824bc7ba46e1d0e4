import { join } from 'node:path';
import { type ServedBuild, serveBuild } from './serve-build.ts';

/** The page of the ears, built as the app is built and served as it is served. */
export function serveEarsPage(): Promise<ServedBuild> {
  return serveBuild('ears-page', {
    root: join(import.meta.dirname, 'ears-page'),
    publicDir: join(import.meta.dirname, '../../public'),
    base: './',
    configFile: false,
    build: { target: 'es2022', chunkSizeWarningLimit: 6000 },
  });
}
