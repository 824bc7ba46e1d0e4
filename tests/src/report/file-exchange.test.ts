import { describe, expect, it } from 'vitest';
import { takenText } from '../../../src/report/file-exchange.tsx';

const NOTHING = {
  newJobs: 0,
  extended: 0,
  keptBeside: 0,
  alreadyHere: 0,
  machineRevisions: 0,
  photosLeftOut: 0,
  latestOrder: 0,
};

describe('what is told of a file that was taken in', () => {
  it('names everything that happened and nothing that did not', () => {
    expect(takenText({ ok: true, taken: { ...NOTHING, newJobs: 2, keptBeside: 1 } })).toBe(
      'Taken in: 2 new jobs, 1 job that went two ways, both kept.',
    );
    expect(takenText({ ok: true, taken: { ...NOTHING, alreadyHere: 1 } })).toBe(
      'Taken in: 1 job that was here already.',
    );
    expect(takenText({ ok: true, taken: NOTHING })).toBe('The file holds no job.');
    expect(takenText({ ok: true, taken: { ...NOTHING, newJobs: 1, photosLeftOut: 3 } })).toBe(
      'Taken in: 1 new job. 3 photos are not in the file; the tablet where they were taken has them.',
    );
  });

  it('is the reason where it was refused', () => {
    expect(takenText({ ok: false, sentence: 'This file is broken.' })).toBe('This file is broken.');
  });
});
