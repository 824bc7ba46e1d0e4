import { join } from 'node:path';
import preact from '@preact/preset-vite';
import { type ServedBuild, serveBuild } from './serve-build.ts';

const root = join(import.meta.dirname, 'screens-page');

/** The app's screens over an acted conversation, built and served as the app is. */
export function serveScreensPage(): Promise<ServedBuild> {
  return serveBuild('screens-page', {
    root,
    publicDir: join(import.meta.dirname, '../../public'),
    base: './',
    configFile: false,
    plugins: [preact()],
    build: {
      target: 'es2022',
      rolldownOptions: { input: [join(root, 'index.html'), join(root, 'pictures.html')] },
    },
  });
}
