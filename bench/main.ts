import { cpus } from 'node:os';
import { fit } from '../src/core/cutmodel/fit.ts';
import { answerFrom } from '../src/core/cutmodel/fitStudy.ts';
import { nextCardFrom } from '../src/core/cutmodel/nextCard.ts';
import type { CutStudy } from '../src/core/cutmodel/cutStudy.ts';
import { seededRandom } from '../src/num/seededRandom.ts';
import { ordinaryTraits, virtualWorkshop } from '../src/core/virtual/virtualWorkshop.ts';
import { cardToSvg } from './cardToSvg.ts';
import { compareReport } from './compare/compareReport.ts';
import { compareBench } from './meter/compareBench.ts';
import { explainBench } from './explain/explainBench.ts';
import { historyReport } from './history/historyReport.ts';
import { focusBench } from './focus/focusBench.ts';
import { meterBench } from './meter/meterBench.ts';
import { mistakesBench } from './mistakes/mistakesBench.ts';
import { motionReport } from './motion/motionReport.ts';
import { tonesReport } from './photo/tonesReport.ts';
import { planLongLine } from './motion/planLongLine.ts';
import { orderBench } from './order/orderBench.ts';
import { pathsReport } from './paths/pathsReport.ts';
import { speedReport } from './posterior/speedReport.ts';
import { proofReport } from './proof/proofReport.ts';
import { surenessReport } from './sureness.ts';
import { strengthBench } from './strength/strengthBench.ts';
import { tapsReport } from './taps/tapsReport.ts';
import { causeBench } from './watch/causeBench.ts';
import { chartBench } from './watch/chartBench.ts';
import { stripBench } from './watch/stripBench.ts';
import { startToHealthMs } from './startToHealth.ts';

/** How near things come, rather than how fast: minutes, so only when asked for, as with `npm run -s bench -- motion`. */
const reports: Readonly<Record<string, () => Iterable<string> | AsyncIterable<string>>> = {
  motion: motionReport,
  proof: proofReport,
  paths: pathsReport,
  taps: tapsReport,
  order: () => orderBench(100),
  strength: () => strengthBench(),
  history: () => historyReport(100),
  mistakes: () => mistakesBench(100),
  explain: () => explainBench(20, 100),
  sureness: () => surenessReport(200),
  focus: () => focusBench(2000),
  compare: () => compareReport(1000),
  posterior: () => speedReport(24),
  tones: () => tonesReport(100),
  meter: function* () {
    yield* meterBench(2000);
    yield* compareBench(2000);
  },
  watch: function* () {
    yield* chartBench(400);
    yield* stripBench(200);
    yield* causeBench(400);
  },
};
const report = reports[process.argv[2] ?? ''];
if (report !== undefined) {
  for await (const line of report()) process.stdout.write(`${line}\n`);
  process.exit(0);
}

/** Medians of repeated runs in one process; every line names what it timed and how often. */
const medianMs = (runs: number, act: () => unknown): number => {
  act();
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    act();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return times[runs >> 1] ?? Number.NaN;
};

/** A study of so many cells cut by an invented workshop: cards of 24 across its changeover. */
const studyOf = (cellCount: number): CutStudy => {
  const random = seededRandom(11);
  const traits = ordinaryTraits(random);
  const shop = virtualWorkshop(traits, random);
  const cells = Array.from({ length: cellCount }, (_, i) => ({
    powerPct: traits.typicalPowerPct + 5 * ((i % 3) - 1),
    speedMmPerS: Math.round(2 * traits.v50MmPerS * (0.7 + (0.6 * (i % 8)) / 7)) / 2,
    passes: 1,
    sheet: `sheet ${String(Math.floor(i / 24))}`,
    xMm: 450,
    yMm: 300,
  }));
  const sheets = [...new Set(cells.map((cell) => cell.sheet))];
  const graded = sheets.flatMap((name) => {
    const sheet = cells.filter((cell) => cell.sheet === name);
    const grades = shop.cutCard(sheet);
    return sheet.map((cell, i) => ({ ...cell, grade: grades[i] ?? ('stays' as const) }));
  });
  return {
    machine: { maxPowerPct: 90, speedRangeMmPerS: [0.5, 200] },
    stock: { material: traits.material, thicknessMm: traits.thicknessMm },
    cells: graded.map(({ powerPct, speedMmPerS, passes, sheet, grade }) => ({
      powerPct,
      speedMmPerS,
      passes,
      sheet,
      grade,
    })),
    tallies: [],
    promise: { outOf100: 97, surePct: 95, partLengthMm: 60, for: 'batch' },
    ask: { powerPct: traits.typicalPowerPct },
  };
};

const small = studyOf(24);
const large = studyOf(250);
const fitted = fit(small);
const rows: readonly (readonly [string, number, number])[] = [
  ['fit and recommendation, 24 cells', medianMs(21, () => answerFrom(fit(small))), 25],
  ['fit and recommendation, 250 cells', medianMs(9, () => answerFrom(fit(large))), 120],
  [
    'next card, beside the fit',
    medianMs(11, () => nextCardFrom(fitted, { cellsWanted: 12, settingsAtMost: 6 })),
    100,
  ],
  ['card to SVG', medianMs(21, cardToSvg), 30],
  ['plan of a line of 100 000 segments', medianMs(11, planLongLine), 150],
  ['process start to the first 200 on /api/health', await startToHealthMs(5), 1500],
];

process.stdout.write(`${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.version}\n`);
for (const [what, ms, target] of rows) {
  process.stdout.write(
    `${what.padEnd(50)} ${ms.toFixed(1).padStart(8)} ms   (target ${String(target)} ms)\n`,
  );
}

for await (const line of tapsReport()) process.stdout.write(`${line}\n`);
for (const line of speedReport(6)) process.stdout.write(`${line}\n`);

// Some seconds, so it is always said beside the times.
for await (const line of pathsReport()) process.stdout.write(`${line}\n`);
