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
  pageBeside: async (page, about) => {
    const { pageBesidePdf } = await import('../print/pageBesidePdf.ts');
    return done(await pageBesidePdf(page, { ...about, madeAt: systemClock.now() }));
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
