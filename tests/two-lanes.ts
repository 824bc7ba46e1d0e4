import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** How long a file of tests takes on two cores beside others, seconds: a clean checkout has no times of its own to go by. */
const USUAL_SECONDS: readonly (readonly [path: RegExp, seconds: number])[] = [
  [/\/browser\/(voice-job|noise|screens|drill-voice|ears-listener)\./, 160],
  [/\/browser\//, 55],
  [/\/flows\/safety\./, 400],
  [/\/speech\/accuracy\./, 250],
  [/\/speech\/own-voice\./, 130],
  [/\/speech\//, 40],
  [/./, 2.5],
];

/** Tests in a browser at once: they speak and listen in real time, and a busy machine makes them stutter. */
const BROWSERS = 2;

/**
 * Starts the tests in browsers, two at a time, and beside them, in what they leave of the machine, one after the other of the
 * rest: a browser that waits for a voice to finish leaves most of a core. As many workers as {@link WORKERS} are needed.
 */
export class TwoLanes extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const longestFirst = sorted.toSorted((a, b) => secondsOf(b) - secondsOf(a));
    return [
      ...lane(longestFirst.filter(isInBrowser), BROWSERS),
      ...lane(
        longestFirst.filter((file) => !isInBrowser(file)),
        1,
      ),
    ]
      .sort((a, b) => a.startsAt - b.startsAt)
      .map(({ file }) => file);
  }
}

export const WORKERS = BROWSERS + 1;

function isInBrowser({ moduleId }: TestSpecification): boolean {
  return moduleId.includes('/tests/browser/');
}

function secondsOf({ moduleId }: TestSpecification): number {
  return USUAL_SECONDS.find(([path]) => path.test(moduleId))?.[1] ?? 0;
}

/** When each file would be started, so many of them at a time, seconds. */
function lane(files: readonly TestSpecification[], atOnce: number) {
  let ahead = 0;
  return files.map((file) => {
    const startsAt = ahead / atOnce;
    ahead += secondsOf(file);
    return { file, startsAt };
  });
}
