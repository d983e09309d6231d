import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { drawOrderCurves, type OrderPoint } from './drawOrderCurves.ts';
import { allOrderMethods } from './orderMethods.ts';
import { ordersInThreads } from './orderThreads.ts';
import { summariseOrders } from './summariseOrders.ts';

/*
 * Excess over the one who knows against the parts that are ordered, all ways on the same seeds: plays what is asked for, keeps
 * it beside what was played before, and draws all that is known.
 */
const { values } = parseArgs({
  options: {
    orders: { type: 'string', default: '24' },
    seed: { type: 'string', default: '101' },
    parts: { type: 'string', default: '30,60,120,300,900,2000' },
    workshops: { type: 'string', default: 'powerLaw,heavyTails,sheetShifts,tenthStock' },
    /** Absent: all. Those not named keep the points that they have. */
    methods: { type: 'string' },
    into: { type: 'string', default: 'docs/paper' },
  },
});

const file = `${values.into}/orders.json`;
mkdirSync(values.into, { recursive: true });
let points: readonly OrderPoint[] = existsSync(file)
  ? (JSON.parse(readFileSync(file, 'utf8')) as OrderPoint[]) // written by this program alone
  : [];

const orders = Number(values.orders);
const methods = values.methods?.split(',') ?? allOrderMethods.map(({ name }) => name);
for (const parts of values.parts.split(',').filter(Boolean).map(Number)) {
  for (const workshop of values.workshops.split(',').filter(Boolean)) {
    const { name, results } = await ordersInThreads(
      new URL(`../workshops/${workshop}.js`, import.meta.url).href,
      {
        orders,
        seed: Number(values.seed),
        order: { parts, partsPerSheet: 30, lengthMm: 180 },
        methods,
      },
    );
    points = [
      ...points.filter(
        (p) => p.workshop !== name || p.parts !== parts || !methods.includes(p.method),
      ),
      ...summariseOrders(results).map((found): OrderPoint => ({
        workshop: name,
        parts,
        orders,
        method: found.name,
        excessPctMedian: found.excessPctMedian,
        excessPctP90: found.excessPctP90,
        notOutPctMean: found.notOutPctMean,
        promiseBrokenPct: found.promiseBrokenPct,
        noPlanPct: found.noPlanPct,
      })),
    ].sort((a, b) => a.parts - b.parts);
    writeFileSync(file, `${JSON.stringify(points, null, 2)}\n`);
    process.stdout.write(`${name}, ${String(parts)} parts\n`);
  }
}
writeFileSync(`${values.into}/orders.svg`, drawOrderCurves(points));
