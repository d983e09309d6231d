import { modelHere } from '../../src/app/sums/modelHere.ts';
import type { CutStudy } from '../../src/core/cutmodel/cutStudy.ts';
import type { Figure, NightPart } from '../night/nightPart.ts';
import { largeStudy, type Many } from './largeStudies.ts';

/** How the cost of the answer, of the next card and of the reasons grows with what was read and counted. */
export const sumsPart: NightPart = {
  name: 'sums',
  about:
    'fit, next card and reasons of up to 5,000 cells, 300 sheets and 5,000 counts: processor time, and how it grows',
  run: () =>
    measureSums([
      { many: 'cells', counts: [50, 500, 5000] },
      { many: 'contradictory cells', counts: [50, 500, 5000] },
      { many: 'sheets', counts: [3, 30, 300] },
      { many: 'counts', counts: [50, 500, 5000] },
    ]),
};

interface Row {
  readonly many: Many;
  /** From few to many. */
  readonly counts: readonly number[];
}

const asked = {
  fit: (study: CutStudy) => modelHere.ask('answerCutStudy', study),
  'next card': (study: CutStudy) => modelHere.ask('nextCard', { study, wish: {}, earlier: [] }),
  reasons: (study: CutStudy) => modelHere.ask('explainCutStudy', study),
} as const;

const atMostS = 10;
/** About linearly: ten times as much costs little more than ten times. */
const timesAtMost = 13;

/** Processor seconds, not seconds by the clock: what else the computer does meanwhile counts for nothing. */
const processorS = async (work: () => Promise<unknown>): Promise<number> => {
  const before = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
};

/** The table: one figure for every count, and for every tenfold step how many times it costs. */
export async function* measureSums(rows: readonly Row[]): AsyncGenerator<Figure> {
  // What is compiled on the way is not of the first row.
  for (const ask of Object.values(asked)) await ask(largeStudy('cells', 50, 2));
  for (const { many, counts } of rows)
    for (const [what, ask] of Object.entries(asked)) {
      let beforeS: number | undefined;
      for (const count of counts) {
        const s = await processorS(() => ask(largeStudy(many, count, 1)));
        const name = `${what}, ${String(count)} ${many}`;
        yield { what: name, value: s, unit: 's', atMost: atMostS };
        // Where little is done, what every sum begins with is most of it.
        if (beforeS !== undefined)
          yield {
            what: `${name}, of the row before`,
            value: s / Math.max(beforeS, 0.1),
            atMost: timesAtMost,
          };
        beforeS = s;
      }
    }
}
