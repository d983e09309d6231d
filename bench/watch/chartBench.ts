import { alarmLimits } from '../../src/core/watch/alarmLimits.ts';
import { watchChart } from '../../src/core/watch/watchChart.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { drawKept, playOrder, type KeptTraits } from './playedOrders.ts';

const plain = { link: 'normal', parts: [50, 400], better: 0, flaws: 0 } as const;

/** The first is as the chart believes and is held to the stated rate; the others show what becomes of it elsewhere. */
const kinds: readonly KeptTraits[] = [
  { ...plain, name: 'orders of 50 to 400 parts' },
  { ...plain, name: 'orders of 10 to 40 parts', parts: [10, 40] },
  { ...plain, name: 'orders of 500 to 2000 parts', parts: [500, 2000] },
  { ...plain, name: 'heavy tails', link: 'student3' },
  { ...plain, name: 'one sd better than the book believes', better: 0.35 },
  { ...plain, name: '1 part in 100 a pocket counted as knife', flaws: 0.01 },
];

const inControlOrders = 300;

/** Alarms without cause by orders watched: each setting is watched until its first alarm, 300 orders at most. */
const falseAlarms = (traits: KeptTraits, runs: number): string => {
  const random = seededRandom(20_310_507);
  let [alarms, orders] = [0, 0];
  for (let run = 0; run < runs; run += 1) {
    const kept = drawKept(traits, random);
    const watched = Array.from({ length: inControlOrders }, (_, n) =>
      playOrder(kept, traits, { n, lossShare: 0 }, random),
    ).flat();
    const first = watchChart(kept.foreseen, watched).points.findIndex(({ alarm }) => alarm);
    if (first >= 0) alarms += 1;
    orders += first < 0 ? watched.length : first + 1;
  }
  const rate = orders / Math.max(1, alarms);
  const half = 196 / Math.sqrt(Math.max(1, alarms));
  return `one alarm without cause in ${rate.toFixed(0)} orders (±${half.toFixed(0)} %; stated ${String(alarmLimits.ordersPerFalseAlarm)})`;
};

const before = 10;
const after = 60;

/** Orders until the alarm after a loss of speed that comes at once, after ten orders without; those alarmed before are left out. */
const delay = (traits: KeptTraits, lossShare: number, runs: number): string => {
  const random = seededRandom(20_310_508);
  const delays: number[] = [];
  for (let run = 0; run < runs; run += 1) {
    const kept = drawKept(traits, random);
    const watched = Array.from({ length: before + after }, (_, n) =>
      playOrder(kept, traits, { n, lossShare: n < before ? 0 : lossShare }, random),
    ).flat();
    const first = watchChart(kept.foreseen, watched).points.findIndex(({ alarm }) => alarm);
    if (first >= 0 && first < before) continue;
    delays.push(first < 0 ? after + 1 : first + 1 - before);
  }
  delays.sort((a, b) => a - b);
  const at = (p: number): number => delays[Math.floor(p * delays.length)] ?? NaN;
  const share = (n: number): string =>
    `${((100 * delays.filter((d) => d <= n).length) / delays.length).toFixed(0)} %`;
  return `${(100 * lossShare).toFixed(0)} % slower seen after ${String(at(0.5))} orders (median; 9 in 10 after ${String(at(0.9))}); ${share(1)} at the first, ${share(3)} by the third`;
};

/** The chart over orders, measured: its false alarms against what is stated, and how soon it sees a loss. */
export const chartBench = function* (runs: number): Generator<string> {
  yield 'the chart over orders of a kept setting';
  for (const [i, traits] of kinds.entries()) {
    const count = i === 0 ? runs : Math.ceil(runs / 4);
    yield `  ${String(count)} × ${traits.name}: ${falseAlarms(traits, count)}`;
    for (const loss of [0.05, 0.1]) yield `    ${delay(traits, loss, count)}`;
  }
};
