import { fitTrials, measureFit } from './fitAccuracy.ts';
import { measureSlips, slipTrials } from './slipDetection.ts';

/** Machines in each trial. */
const machines = 120;

const pct = (value: number): string => `${value.toFixed(1)} %`.padStart(8);

/** Lines of a report on what timed jobs tell, one after the other as they are ready. */
export function* motionReport(): Generator<string> {
  yield `What ${String(machines)} simulated machines, each timed with 1 % noise, take over ten drawings that the fit has not seen.`;
  yield 'Target: within 3 % from six jobs, where the machine moves by the planner’s own rules.';
  yield `${''.padEnd(52)}  median   95th   within 3 %  all ten  in band  refused`;
  for (const trial of fitTrials) {
    const found = measureFit(trial, machines);
    yield [
      trial.name.padEnd(52),
      pct(found.medianOffPct),
      pct(found.offPctOf95),
      pct(found.within3Pct),
      pct(found.allWithin3Pct),
      pct(found.inBandPct),
      String(found.refused).padStart(6),
    ].join(' ');
  }
  yield '';
  yield `What the time of a card tells of a speed typed wrong, on ${String(machines)} machines fitted from six jobs.`;
  yield `${''.padEnd(44)} cards  shows  named  of those  first  figure  wrong  unclear`;
  for (const trial of slipTrials) {
    const found = measureSlips(trial, machines);
    const counts = [found.cards, found.showing, found.named, found.namedOfShowing];
    const rest = [found.first, found.figure, found.wrong, found.unclear];
    yield `${found.name.padEnd(44)}${[...counts, ...rest].map((count) => String(count).padStart(7)).join('')}`;
  }
}
