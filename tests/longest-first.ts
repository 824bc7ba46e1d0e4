import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Where the longest tests are: those that wait for a voice to speak, the walk through every state, those that decode. */
const LONG = ['/tests/browser/', '/tests/flows/safety', '/tests/speech/', '/tests/audio/mouth/'];

/** A clean checkout does not know how long its tests take. The long ones go first; the short ones fill up both cores to the end. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const placeOf = ({ moduleId }: TestSpecification) => LONG.findIndex((place) => moduleId.includes(place));
    return [...LONG.keys(), -1].flatMap((place) => sorted.filter((file) => placeOf(file) === place));
  }
}
