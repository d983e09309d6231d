import type { WorkshopTraits } from '../../src/core/virtual/virtualWorkshop.ts';
import { play } from '../campaign.ts';
import { throughcut } from '../methods/throughcut.ts';
import { summarise } from '../summary.ts';
import { laterStock } from './laterStock.ts';

const stocksBefore = [0, 1, 2, 4, 9];
const kinds: readonly (readonly [string, () => Partial<WorkshopTraits>])[] = [
  ['plain', () => ({})],
  ['heavy tails', () => ({ link: 'student3' })],
];

/** How the first, second, third, fifth and tenth stock of a workshop start: the same stocks, with less or more before them. */
export function* historyReport(runs: number): Generator<string> {
  for (const [kind, change] of kinds) {
    for (const cells of [16, 24]) {
      for (const before of stocksBefore) {
        const shop = laterStock(before, change);
        const results = Array.from({ length: runs }, (_, i) =>
          play(shop, throughcut, i + 1, { cellsAtMost: cells, settingsAtMost: 12 }),
        );
        for (const found of summarise(results)) {
          const ratio = [found.speedRatioMedian, found.speedRatioP10].map(
            (value) => value?.toFixed(3) ?? '-',
          );
          yield `${kind}, ${String(cells)} cells, ${shop.name}: ratio ${ratio.join(', p10 ')}, kept ${found.promiseKeptPct?.toFixed(1) ?? '-'} %, no answer ${found.noAnswerPct.toFixed(1)} %`;
        }
      }
    }
  }
}
