import fc from 'fast-check';

// The same examples on every run: a failure is found again by whoever looks for it. Change the seed to look elsewhere.
fc.configureGlobal({ seed: 1_125 });
