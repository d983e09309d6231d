import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { methodsAndBound } from '../methods/all.ts';
import { summarise, type MethodSummary } from '../summary.ts';
import { runInThreads } from '../threads.ts';
import { drawCurves, type CurvePoint } from './drawCurves.ts';

/*
 * Speed ratio and kept share against the number of cells, all methods on the same seeds: plays what is asked for, keeps it
 * beside what was played before, and draws all that is known.
 */
const { values } = parseArgs({
  options: {
    runs: { type: 'string', default: '100' },
    cells: { type: 'string', default: '6,8,12,16,24,36,48,60' },
    workshops: { type: 'string', default: 'powerLaw,heavyTails,sheetShifts' },
    /** Absent: all. Those not named keep the points that they have. */
    methods: { type: 'string' },
    into: { type: 'string', default: 'docs/paper' },
  },
});

const file = `${values.into}/curves.json`;
mkdirSync(values.into, { recursive: true });
let points: CurvePoint[] = existsSync(file)
  ? (JSON.parse(readFileSync(file, 'utf8')) as CurvePoint[]) // written by this program alone
  : [];

const pointOf = (
  workshop: string,
  cellsAtMost: number,
  runs: number,
  method: MethodSummary,
): CurvePoint => ({
  workshop,
  cellsAtMost,
  runs,
  method: method.name,
  cells: method.cellsMedian,
  cards: method.cardsMedian,
  settingsTyped: method.settingsTypedMedian,
  speedRatio: method.speedRatioMedian,
  speedRatioP10: method.speedRatioP10,
  keptPct: method.promiseKeptPct,
  noAnswerPct: method.noAnswerPct,
});

const runs = Number(values.runs);
const methods = values.methods?.split(',') ?? methodsAndBound.map((method) => method.name);
for (const cellsAtMost of values.cells.split(',').filter(Boolean).map(Number)) {
  for (const workshop of values.workshops.split(',')) {
    const { name, results } = await runInThreads(
      new URL(`../workshops/${workshop}.js`, import.meta.url).href,
      {
        runs,
        seed: 1,
        limits: { cellsAtMost, settingsAtMost: Math.floor(cellsAtMost / 2) },
        methods,
      },
    );
    points = [
      ...points.filter(
        (p) => p.workshop !== name || p.cellsAtMost !== cellsAtMost || !methods.includes(p.method),
      ),
      ...summarise(results).map((method) => pointOf(name, cellsAtMost, runs, method)),
    ].sort((a, b) => a.cellsAtMost - b.cellsAtMost);
    writeFileSync(file, `${JSON.stringify(points, null, 1)}\n`);
    process.stdout.write(`${name}, ${String(cellsAtMost)} cells\n`);
  }
}
writeFileSync(`${values.into}/curves-by-cells.svg`, drawCurves(points, 'cells'));
writeFileSync(`${values.into}/curves-by-settings.svg`, drawCurves(points, 'settingsTyped'));
