import { execFileSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { type Browser, chromium as playwrightChromium } from 'playwright-core';

/** Names Chromium goes by, most wanted first. */
const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome'];

/** Switches every test browser needs; the sandbox cannot start under root. */
const ALWAYS = ['--no-sandbox', '--autoplay-policy=no-user-gesture-required'];

/**
 * Where Chromium is. When there is none and we may, Debian's is installed.
 * @throws an Error of one line that says what to install
 */
export function findChromium(): string {
  const found = onPath(NAMES);
  if (found !== undefined) return found;
  if (process.getuid?.() === 0 && onPath(['apt-get']) !== undefined) {
    try {
      execFileSync('apt-get', ['install', '--yes', '--no-install-recommends', 'chromium'], {
        stdio: 'ignore',
      });
    } catch {
      // Whatever stopped it, the line below says what is missing.
    }
    const installed = onPath(NAMES);
    if (installed !== undefined) return installed;
  }
  throw new Error('The browser tests need Chromium: install it with "apt-get install chromium".');
}

/** Starts a headless Chromium. @param switches more command-line switches */
export function launchChromium(switches: readonly string[] = []): Promise<Browser> {
  return playwrightChromium.launch({
    executablePath: findChromium(),
    headless: true,
    args: [...ALWAYS, ...switches],
  });
}

function onPath(names: readonly string[]): string | undefined {
  const folders = (process.env.PATH ?? '').split(delimiter);
  return names.flatMap((name) => folders.map((folder) => join(folder, name))).find(isExecutable);
}

function isExecutable(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
