import { answerSpeed } from '../src/core/cutmodel/answerSpeed.ts';
import { fastestOutAt } from '../src/core/cutmodel/evidence.ts';
import type { Fit } from '../src/core/cutmodel/fit.ts';
import { seededRandom } from '../src/num/seededRandom.ts';
import { wantedShare, wantedSurePct } from './methods/method.ts';
import { cutThreeCards } from './methods/throughcut.ts';
import { quantile } from './summary.ts';
import { cutShapes, type BenchCell, type OpenedWorkshop, type WorkshopModule } from './workshop.ts';
import * as heavyTails from './workshops/heavyTails.ts';
import * as powerLaw from './workshops/powerLaw.ts';
import * as sheetShifts from './workshops/sheetShifts.ts';

const limits = { cellsAtMost: 24, settingsAtMost: 12 };
const suresPct = [90, 92, 93.5, wantedSurePct, 96.5, 98] as const;

/**
 * What a promise costs in speed: the same campaigns of three cards, answered as for one who wants to be more or less
 * sure. A line a workshop and certainty: median and tenth of the speed ratio, and the share of promises kept.
 */
export const surenessReport = function* (runs: number): Generator<string> {
  for (const workshop of [powerLaw, heavyTails, sheetShifts] satisfies readonly WorkshopModule[]) {
    const campaigns = Array.from({ length: runs }, (_, i) => {
      const seed = i + 1;
      const shop = workshop.openWorkshop(seed);
      const seen = { ...shop, cutCard: (cells: readonly BenchCell[]) => cutShapes(shop, cells) };
      return { shop, found: cutThreeCards(seen, seededRandom(seed * 7919 + 13), limits) };
    });
    for (const surePct of suresPct) {
      const judged = campaigns.flatMap(({ shop, found }) => judge(shop, found, surePct));
      const ratios = judged.map(({ ratio }) => ratio);
      const kept = judged.filter((one) => one.kept).length / judged.length;
      yield `${workshop.name.padEnd(14)} ${surePct.toFixed(1).padStart(5)} % sure: speed ratio ${figure(quantile(ratios, 0.5))}, a tenth below ${figure(quantile(ratios, 0.1))}, kept ${(100 * kept).toFixed(1)} % (${String(judged.length)} of ${String(runs)} campaigns answered)`;
    }
  }
};

const figure = (value: number | null): string => value?.toFixed(3) ?? '–';

/** Nothing where there is no answer. */
const judge = (
  shop: OpenedWorkshop,
  { decision, evidence }: Fit,
  surePct: number,
): readonly { readonly ratio: number; readonly kept: boolean }[] => {
  const powerPct = shop.typicalPowerPct;
  const cap = fastestOutAt(evidence, powerPct);
  const holding = decision.fastestHolding(powerPct, surePct);
  if (cap === null || holding === null || evidence.notOutCells === 0) return [];
  const speedMmPerS = answerSpeed(Math.min(holding, cap));
  return [
    {
      ratio: speedMmPerS / shop.fastestKeeping(wantedShare, powerPct),
      kept:
        shop.trueOutShare({ powerPct, speedMmPerS, passes: 1, air: true }) >= wantedShare - 1e-9,
    },
  ];
};
