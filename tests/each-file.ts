import { setPriority } from 'node:os';
import fc from 'fast-check';
import { expect } from 'vitest';

// The same examples on every run: a failure is found again by whoever looks for it. Change the seed to look elsewhere.
fc.configureGlobal({ seed: 1_125 });

// Each file has a process of its own. Those that only compute stand back behind browsers, which speak and listen in real time.
if (!expect.getState().testPath?.includes('/tests/browser/')) setPriority(10);
