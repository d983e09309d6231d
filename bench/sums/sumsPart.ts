import { modelHere } from '../../src/app/sums/modelHere.ts';
import type { CutStudy } from '../../src/core/cutmodel/cutStudy.ts';
import type { Figure, NightPart } from '../night/nightPart.ts';
import { largeStudy, type Many } from './largeStudies.ts';

/** How the cost of the answer, of the next card and of the reasons grows with what was read and counted. */
export const sumsPart: NightPart = {
  name: 'sums',
  about:
    'fit, next card and reasons of up to 5,000 cells, 300 sheets and 5,000 counts: processor time, held to a line in them',
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

/**
 * What is asked is a straight line, so that nothing grows faster than what there is of it: 3 s for what every sum begins with,
 * 10 s for the most. Reasons make fits as long as there is time, whatever there is little of: 10 s for any.
 */
const lineS = { few: 3, most: 10 } as const;
const askedS = (what: keyof typeof asked, share: number): number =>
  what === 'reasons' ? lineS.most : lineS.few + (lineS.most - lineS.few) * share;

const names = ['fit', 'next card', 'reasons'] as const;

/** Processor seconds, not seconds by the clock: what else the computer does meanwhile counts for nothing. */
const processorS = async (work: () => Promise<unknown>): Promise<number> => {
  const before = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
};

/** The table: one figure for every count, held to a line in it. */
export async function* measureSums(rows: readonly Row[]): AsyncGenerator<Figure> {
  // What is compiled on the way is not of the first row.
  for (const ask of Object.values(asked)) await ask(largeStudy('cells', 50, 2));
  for (const { many, counts } of rows)
    for (const what of names)
      for (const count of counts) {
        const s = await processorS(() => asked[what](largeStudy(many, count, 1)));
        const atMost = askedS(what, count / Math.max(...counts));
        yield { what: `${what}, ${String(count)} ${many}`, value: s, unit: 's', atMost };
      }
}
