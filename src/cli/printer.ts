import { done } from '../core/problem.ts';
import { systemClock } from '../host/clock.ts';
import type { Printer } from '../served/files/printer.ts';
import { version } from './version.ts';

/** Printing by this program; each kind of page is loaded when it is first asked for. */
export const printer: Printer = {
  jobSheet: async (sheet, about) => {
    const { jobSheetPdf } = await import('../print/jobSheetPdf.ts');
    return done(await jobSheetPdf(sheet, { ...about, madeAt: systemClock.now() }));
  },
  rampSheet: async (card, about) => {
    const { rampSheetPdf } = await import('../print/rampSheetPdf.ts');
    return done(await rampSheetPdf(card, { ...about, madeAt: systemClock.now() }));
  },
  kerfSheet: async (card, about) => {
    const { kerfSheetPdf } = await import('../print/kerfSheetPdf.ts');
    return done(await kerfSheetPdf(card, { ...about, madeAt: systemClock.now() }));
  },
  markStripSheet: async (strip, about) => {
    const { markStripPdf } = await import('../print/markStripPdf.ts');
    return done(await markStripPdf(strip, { ...about, madeAt: systemClock.now() }));
  },
  wallList: async (machines, about) => {
    const { wallListPdf } = await import('../print/wallListPdf.ts');
    return done(await wallListPdf(machines, { ...about, madeAt: systemClock.now() }));
  },
  reasoning: async (cut, explanation, about) => {
    const { reasoningPdf } = await import('../print/reasoningPdf.ts');
    return done(
      await reasoningPdf(cut, explanation, {
        ...about,
        version: version(),
        madeAt: systemClock.now(),
      }),
    );
  },
};
