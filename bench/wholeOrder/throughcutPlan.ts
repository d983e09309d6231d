import { planOrder } from '../../src/app/sums/planOrder.ts';
import type { CutStudy } from '../../src/core/cutmodel/cutStudy.ts';
import type { PlanWeighs } from '../../src/core/plan/planNext.ts';
import { usualPlanCosts, type OrderAim } from '../../src/core/plan/planWish.ts';
import { layoutOf, wantedShare, wantedSurePct } from '../methods/method.ts';
import { earlierIn } from '../methods/throughcut.ts';
import { thicknessOf } from '../thickness.ts';
import type { OrderMethod } from './referee.ts';

/** More sound parts of 100 than these should not fail where the cheapest is wished for. */
const acceptNotOutOf100 = 3;

/** Something less than the whole plan, to see what is missing then. */
export interface Without {
  readonly name: string;
  readonly weighs: PlanWeighs;
}

/** What a user of the tool does: the plan's next act, until the order is done. */
export const throughcutPlan = (wish: OrderAim, without?: Without): OrderMethod => ({
  name: `throughcut-${wish}${without === undefined ? '' : `-${without.name}`}`,
  play: (shop, random) => {
    const earlier = earlierIn(shop.history);
    const { parts, partsPerSheet, lengthMm } = shop.order;
    const powerPct = shop.typicalPowerPct;
    let study: CutStudy = {
      machine: shop.machine,
      // The workshop's own stock: someone has looked at what it is.
      stock: {
        material: shop.stock.material,
        thicknessMm: thicknessOf(shop),
        materialKnown: true,
      },
      cells: [],
      tallies: [],
      promise: {
        outOf100: 100 * wantedShare,
        surePct: wantedSurePct,
        partLengthMm: lengthMm,
        for: 'batch',
      },
      ask: { powerPct },
    };
    for (let sheet = 1; ; sheet += 1) {
      const planned = planOrder({
        study,
        wish: {
          parts,
          done: shop.done(),
          partsPerSheet,
          partLengthMm: lengthMm,
          wish,
          acceptNotOutOf100,
          costS: usualPlanCosts,
        },
        earlier,
        ...(without === undefined ? {} : { weighs: without.weighs }),
      });
      if (!planned.ok) throw new Error(`an order without a plan: ${planned.problem.code}`);
      const { next } = planned.value.plan;
      if (next.act === 'done') return;
      if (next.act === 'card') {
        const rungs = random.shuffle([...new Set(next.cells.map(({ rung }) => rung))]);
        const cells = rungs.flatMap((rung) => next.cells.filter((cell) => cell.rung === rung));
        const places = random.shuffle(cells.map((_, i) => i));
        const grades = shop.cutCard(layoutOf(shop, cells, places));
        study = {
          ...study,
          cells: [
            ...study.cells,
            ...cells.map(({ speedMmPerS }, i) => ({
              powerPct,
              speedMmPerS,
              passes: 1,
              sheet: `card ${String(sheet)}`,
              grade: grades[i] ?? ('stays' as const),
            })),
          ],
        };
      } else {
        const counts = shop.cutSheet(next.settings);
        study = {
          ...study,
          tallies: [
            ...study.tallies,
            ...counts.map(({ speedMmPerS, ...count }) => ({
              ...count,
              setting: { powerPct, speedMmPerS, passes: 1 },
              partLengthMm: lengthMm,
              sheet: `sheet ${String(sheet)}`,
            })),
          ],
        };
      }
    }
  },
});
