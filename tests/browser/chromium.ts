import { type Browser, chromium as playwrightChromium } from 'playwright-core';
import { ensureDebianPackages, onPath } from '../debian.ts';

/** Names Chromium goes by, most wanted first: the one that draws no windows of its own leaves more time to the tests. */
const NAMES = [
  'chromium-headless-shell',
  'chromium',
  'chromium-browser',
  'google-chrome-stable',
  'google-chrome',
];

/** Switches every test browser needs; the sandbox cannot start under root. */
const ALWAYS = ['--no-sandbox', '--autoplay-policy=no-user-gesture-required'];

/**
 * Where Chromium is. When there is none and we may, Debian's is installed.
 * @throws an Error of one line that says what to install
 */
export function findChromium(): string {
  const found = () => NAMES.map(onPath).find((file) => file !== undefined);
  const there = found();
  if (there !== undefined) return there;
  ensureDebianPackages();
  const installed = found();
  if (installed === undefined)
    throw new Error('Chromium is missing: apt-get install chromium-headless-shell');
  return installed;
}

/** Starts a headless Chromium. @param switches more command-line switches */
export function launchChromium(switches: readonly string[] = []): Promise<Browser> {
  return playwrightChromium.launch({
    executablePath: findChromium(),
    headless: true,
    args: [...ALWAYS, ...switches],
  });
}
