import fc from 'fast-check';

/**
 * Property tests draw the same cases on every run, so that a check that passed passes again; `THROUGHCUT_SEED=…` draws
 * others, to look further.
 */
fc.configureGlobal({ seed: Number(process.env['THROUGHCUT_SEED'] ?? '20311') });
