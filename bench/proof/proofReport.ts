import { measureAgreement } from './agreement.ts';

const drawings = 60;

/** Lines of a report on how near the places of a proof come to walking every line. */
export function* proofReport(): Generator<string> {
  const found = measureAgreement(drawings, 1);
  const { places, agreeing, missedRuns, within1Pct, withVerdict } = found;
  yield `Places where the head slows, on ${String(drawings)} invented drawings and machines, against walking every line in steps of 2.5 µm.`;
  yield 'Target: the same verdict at 99 of 100 places.';
  yield `places ${String(places)}, same verdict ${((100 * agreeing) / places).toFixed(2)} %, missed ${String(missedRuns)}, margin change within 0.01: ${within1Pct.toFixed(1)} %`;
  yield `verdicts: ${Object.entries(withVerdict)
    .map(([verdict, count]) => `${verdict} ${String(count)}`)
    .join(', ')}`;
}
