import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { pathToFileURL } from 'node:url';
import { allMethods, methodNames } from './methods/all.ts';
import { refuse, wholeNumber } from './options.ts';
import { runInThreads } from './threads.ts';
import { summarise, type MethodSummary } from './summary.ts';
import { oneBoardWorkshops, ownWorkshops } from './workshops/own.ts';

const { values } = parseArgs({
  options: {
    workshop: { type: 'string', multiple: true },
    runs: { type: 'string', default: '200' },
    seed: { type: 'string', default: '1' },
    json: { type: 'boolean', default: false },
    'cells-at-most': { type: 'string', default: '24' },
    'settings-at-most': { type: 'string', default: '12' },
    methods: { type: 'string' },
  },
});

const job = {
  runs: wholeNumber(values.runs, 'runs'),
  seed: wholeNumber(values.seed, 'seed'),
  limits: {
    cellsAtMost: wholeNumber(values['cells-at-most'], 'cells-at-most'),
    settingsAtMost: wholeNumber(values['settings-at-most'], 'settings-at-most'),
  },
  methods:
    methodNames(values.methods) ??
    refuse(
      `--methods is ${String(values.methods)}.`,
      `Give all, or some of ${allMethods.map(({ name }) => name).join(',')}.`,
    ),
};

const base = process.env['INIT_CWD'] ?? process.cwd();
const workshops = values.workshop
  ? values.workshop.map((file) => pathToFileURL(resolve(base, file)).href)
  : [...ownWorkshops, ...oneBoardWorkshops];

const table = (name: string, methods: readonly MethodSummary[]): string =>
  [
    name,
    'method          cells cards settings  speed ratio   p10   kept  no answer',
    ...methods.map((m) =>
      [
        m.name.padEnd(15),
        String(m.cellsMedian).padStart(5),
        String(m.cardsMedian).padStart(5),
        String(m.settingsTypedMedian).padStart(8),
        (m.speedRatioMedian?.toFixed(3) ?? '–').padStart(12),
        (m.speedRatioP10?.toFixed(3) ?? '–').padStart(6),
        (m.promiseKeptPct === null ? '–' : `${m.promiseKeptPct.toFixed(1)} %`).padStart(7),
        `${m.noAnswerPct.toFixed(1)} %`.padStart(9),
      ].join(' '),
    ),
    '',
  ].join('\n');

for (const workshop of workshops) {
  const { name, results } = await runInThreads(workshop, job);
  const methods = summarise(results);
  process.stdout.write(
    values.json
      ? `${JSON.stringify({ workshop: name, runs: job.runs, methods })}\n`
      : `${table(`${name}, ${String(job.runs)} runs`, methods)}\n`,
  );
}
