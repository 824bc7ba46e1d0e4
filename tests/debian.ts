import { type ExecFileSyncOptions, execFileSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/**
 * What the tests take from Debian beside Node, with one file that shows each is there. Synthetic speakers, recordings of
 * people, an independent recogniser and the browser are no npm packages.
 */
const NEEDED: Readonly<Record<string, string>> = {
  'chromium-headless-shell': 'chromium-headless-shell',
  'pocketsphinx-en-us': '/usr/share/pocketsphinx/model/en-us/cmudict-en-us.dict',
  pocketsphinx: 'pocketsphinx_batch',
  flite: 'flite',
  festival: 'text2wave',
  'festvox-kallpc16k': '/usr/share/festival/voices/english/kal_diphone',
  'festvox-kdlpc16k': '/usr/share/festival/voices/english/ked_diphone',
  'festvox-us-slt-hts': '/usr/share/festival/voices/us/cmu_us_slt_arctic_hts',
  sox: 'sox',
  'espeak-ng': 'espeak-ng',
  'pocketsphinx-testdata': '/usr/share/pocketsphinx/test/data/librivox',
  'asterisk-core-sounds-en-wav': '/usr/share/asterisk/sounds/en_US_f_Allison/digits',
  sctk: '/usr/lib/sctk/bin/sclite',
  'poppler-utils': 'pdftoppm',
};

/**
 * Sees to it that every Debian package the tests need is there: installed through apt where we are root.
 * @throws an Error of one line that says what to install, where it cannot be
 */
export function ensureDebianPackages(): void {
  const missing = missingPackages();
  if (missing.length === 0) return;
  if (process.getuid?.() === 0 && onPath('apt-get')) {
    const quiet: ExecFileSyncOptions = { stdio: ['ignore', 'ignore', 'inherit'] };
    execFileSync('apt-get', ['update', '-qq'], quiet);
    execFileSync('apt-get', ['install', '-qq', '--yes', '--no-install-recommends', ...missing], {
      ...quiet,
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
  }
  const still = missingPackages();
  if (still.length > 0) {
    throw new Error(`The tests need Debian packages that are missing: apt-get install ${still.join(' ')}`);
  }
}

function missingPackages(): string[] {
  return Object.entries(NEEDED).flatMap(([name, sign]) => {
    const there = sign.startsWith('/') ? existsSync(sign) : onPath(sign) !== undefined;
    return there ? [] : [name];
  });
}

/** Where a program is, or undefined where it is not on the path. */
export function onPath(program: string): string | undefined {
  return (process.env.PATH ?? '')
    .split(delimiter)
    .map((folder) => join(folder, program))
    .find((file) => {
      try {
        accessSync(file, constants.X_OK);
        return true;
      } catch {
        return false;
      }
    });
}
