import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { pathToFileURL } from 'node:url';
import { ownWorkshops } from '../workshops/own.ts';
import { refuse, wholeNumber } from '../options.ts';
import { allOrderMethods, orderMethods } from './orderMethods.ts';
import { summariseOrders, type OrderSummary } from './summariseOrders.ts';
import { ordersInThreads } from './orderThreads.ts';

const { values } = parseArgs({
  options: {
    workshop: { type: 'string', multiple: true },
    orders: { type: 'string', default: '48' },
    seed: { type: 'string', default: '1' },
    parts: { type: 'string', default: '300' },
    'parts-per-sheet': { type: 'string', default: '30' },
    'length-mm': { type: 'string', default: '180' },
    wish: { type: 'string' },
    methods: { type: 'string' },
    json: { type: 'boolean', default: false },
  },
});

const names = orderMethods.map(({ name }) => name);

/** All methods, some by name, or all but the plan of the other wish. */
const methodsAsked = (): readonly string[] => {
  const { wish } = values;
  if (wish !== undefined && !names.includes(`throughcut-${wish}`)) {
    refuse(`--wish is ${wish}.`, 'Give promise or cheapest.');
  }
  const some = values.methods?.split(',') ?? names;
  const known = allOrderMethods.map(({ name }) => name);
  const unknown = some.find((name) => !known.includes(name));
  if (unknown !== undefined)
    refuse(`--methods has ${unknown}.`, `Give some of ${known.join(',')}.`);
  return some.filter(
    (name) =>
      wish === undefined || !name.startsWith('throughcut-') || name === `throughcut-${wish}`,
  );
};

const job = {
  orders: wholeNumber(values.orders, 'orders'),
  seed: wholeNumber(values.seed, 'seed'),
  order: {
    parts: wholeNumber(values.parts, 'parts'),
    partsPerSheet: wholeNumber(values['parts-per-sheet'], 'parts-per-sheet'),
    lengthMm: wholeNumber(values['length-mm'], 'length-mm'),
  },
  methods: methodsAsked(),
};

const base = process.env['INIT_CWD'] ?? process.cwd();
const workshops = values.workshop
  ? values.workshop.map((file) => pathToFileURL(resolve(base, file)).href)
  : ownWorkshops;

const figure = (value: number | null, digits: number, width: number): string =>
  (value?.toFixed(digits) ?? '–').padStart(width);

const table = (title: string, methods: readonly OrderSummary[]): string =>
  [
    title,
    'method                excess    p90  not out  minutes  cards  typed  no plan  broken',
    ...methods.map((m) =>
      [
        m.name.padEnd(20),
        `${figure(m.excessPctMedian, 1, 6)} %`,
        figure(m.excessPctP90, 1, 6),
        `${figure(m.notOutPctMean, 1, 6)} %`,
        figure(m.minutesMedian, 0, 8),
        figure(m.cardsMedian, 1, 6),
        figure(m.typedMedian, 1, 6),
        `${figure(m.noPlanPct, 1, 6)} %`,
        `${figure(m.promiseBrokenPct, 1, 5)} %`,
      ].join(' '),
    ),
    '',
  ].join('\n');

for (const workshop of workshops) {
  const { name, results } = await ordersInThreads(workshop, job);
  const methods = summariseOrders(results);
  const { parts, lengthMm } = job.order;
  process.stdout.write(
    values.json
      ? `${JSON.stringify({ workshop: name, orders: job.orders, parts, lengthMm, methods })}\n`
      : `${table(`${name}, ${String(job.orders)} orders of ${String(parts)} parts of ${String(lengthMm)} mm`, methods)}\n`,
  );
}
