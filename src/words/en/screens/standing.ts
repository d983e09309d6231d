import type { NextAct, Standing, StandingKind } from '../../../core/standing/standing.ts';
import { inHundred, sureWords } from '../terms/figures.ts';

/** How a sheet or a kept setting stands, in the same words wherever it is shown. */
export const standingText = {
  kinds: {
    holds: 'Holds',
    'watch-it': 'Watch it',
    failed: 'Failed: one step slower until checked',
    'not-known': 'Not known yet',
  } satisfies Record<StandingKind, string>,
  guess: 'Guess',
  next: {
    'cut-strip': 'Cut a check strip',
    'cut-card': 'Make a card to cut',
    'card-that-reaches': 'Make a card that reaches it',
    'finish-reading': 'Say what the rest did',
    'keep-it': 'Keep it in the book',
    'count-order': 'Count an order',
    'nothing-to-do': 'Go on counting',
  } satisfies Record<NextAct, string>,
  /** In a line at the foot of a phone. */
  short: ({ kind, isGuess, promise }: Standing): string =>
    isGuess
      ? `${standingText.guess}: outside what was cut.`
      : kind === 'holds'
        ? `${inHundred(promise.outOf100)} in 100 come out; ${sureWords(promise.surePct)} sure.`
        : `${standingText.kinds[kind]}.`,
  run: 'Run this now',
  runMore: 'one step slower until checked',
  kept: 'Kept in the book',
  keptWas: (kept: string) => `Kept was ${kept}.`,
  notToBeCut: 'Not cut here',
  noPromise: 'No promise stands for it now.',
  labelCare: 'Do not run the kept speed. Look in the book first.',
} as const;
