import { figure, text, type ProblemList } from './param.ts';

/** What can be the matter with readings of the meter, and what is asked of them. */
export const meterProblems = {
  'meter-plan-needs-rating': {},
  'meter-beyond-readings': { powerPct: figure, leastPct: figure, mostPct: figure },
  'meter-between-dark-and-lit': { powerPct: figure, darkAtPct: figure, firesAtPct: figure },
  'meter-current-not-reached': { currentMa: figure, mostMa: figure, mostPct: figure },
  'meter-current-below-firing': { currentMa: figure, leastMa: figure, firesAtPct: figure },
  'meter-reading-doubtful': { powerPct: figure, currentMa: figure, expectedMa: figure },
  'meter-reading-reversed': { lowPct: figure, lowMa: figure, highPct: figure, highMa: figure },
  'meter-repeats-apart': { powerPct: figure, lowMa: figure, highMa: figure },
  'meter-drifts': { byPct: figure, which: text },
  'meter-flickers': { powerPct: figure },
  'meter-fired-below-dark': { litPct: figure, darkPct: figure },
  'meter-above-rated': { powerPct: figure, currentMa: figure, ratedMa: figure },
  'meter-no-repeats': {},
  'meter-never-dark': { firesAtPct: figure },
  'meter-wide-gap': { lowPct: figure, highPct: figure },
  'meter-water-warm': { waterC: figure },
  'meter-water-cold': { waterC: figure },
} as const satisfies ProblemList;

export type MeterCode = keyof typeof meterProblems;
