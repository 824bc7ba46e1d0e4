import { BaseSequencer, type TestSpecification } from 'vitest/node';

/**
 * A clean checkout does not know how long its tests take. Those that wait for a voice to speak are the longest, so they go
 * first, and the short ones fill up both cores to the end.
 */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const isLong = ({ moduleId }: TestSpecification) => moduleId.includes('/tests/browser/');
    return [...sorted.filter(isLong), ...sorted.filter((file) => !isLong(file))];
  }
}
