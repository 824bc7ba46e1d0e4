import preact from '@preact/preset-vite';
import { defineConfig } from 'vitest/config';
import { serviceWorker } from './src/offline/service-worker-build.ts';

// Only the tests need their order; a build does not wait for the test runner to load.
const sequence = process.env.VITEST
  ? { sequencer: (await import('./tests/longest-first.ts')).LongestFirst }
  : {};

// The page's root is src/, so index.html lives beside the code that fills it and the top level stays clean.
export default defineConfig({
  root: 'src',
  publicDir: '../public',
  base: './',
  plugins: [preact(), serviceWorker()],
  build: { outDir: '../dist', emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 6000 },
  test: {
    root: '.',
    include: ['tests/**/*.test.{ts,tsx}'],
    globalSetup: 'tests/set-up.ts',
    setupFiles: 'tests/each-file.ts',
    // Two cores, and browsers and recognisers beside the tests: slow is not broken.
    maxWorkers: 2,
    sequence,
    testTimeout: 240_000,
    hookTimeout: 120_000,
    expect: { poll: { timeout: 15_000 } },
  },
});
