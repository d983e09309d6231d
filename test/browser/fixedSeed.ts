import fc from 'fast-check';

/** As in `test/fixedSeed.ts`: a browser knows no settings of the shell, so the seed is always the same. */
fc.configureGlobal({ seed: 20311 });
