import { differences, measureEarlierRule } from './earlierRule.ts';
import { measureLeaveOneOut } from './leaveOneOut.ts';

/** How near leaving out by weights comes to fits, and how often an answer stops leaning on earlier sheets, rightly or not. */
export const explainBench = function* (studies: number, workshops: number): Generator<string> {
  const left = measureLeaveOneOut(studies);
  yield `leave one out, ${String(left.parts)} parts of ${String(left.studies)} studies of 24 cells, against large fits: error of the speed ${left.medianErrorPct.toFixed(2)} % (median), ${left.p95ErrorPct.toFixed(2)} % (19 in 20), ${left.worstErrorPct.toFixed(2)} % (worst); shifts ${left.medianShiftPct.toFixed(2)} % (median), ${left.worstShiftPct.toFixed(2)} % (worst); ${left.byWeightsPct.toFixed(0)} % by weights`;
  for (const difference of differences) {
    const { stoppedPct, everStoppedPct } = measureEarlierRule(difference, workshops);
    yield `stops leaning on earlier sheets, ${difference}: ${stoppedPct.toFixed(1)} % after 12 cells, ${everStoppedPct.toFixed(1)} % asked after every third (${String(workshops)} workshops)`;
  }
};
