import { ceilingOfOrders, orderVerdict } from '../../src/core/cutmodel/countedOrders.ts';
import { fit } from '../../src/core/cutmodel/fit.ts';
import { lineOf, recommend } from '../../src/core/cutmodel/recommend.ts';
import type { CutStudy } from '../../src/core/cutmodel/cutStudy.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { drawCounted } from './drawCounted.ts';

/** How a study with counted orders may break what must hold of every one. */
export const ruleBreaks = [
  'no-answer',
  'bad-order-raised',
  'at-a-failed-speed',
  'clean-order-lowered',
] as const;
export type BrokenRule = (typeof ruleBreaks)[number];

const speedOf = (study: CutStudy): number | null => {
  const fitted = fit(study);
  const choice = recommend(fitted, lineOf(fitted));
  return 'reason' in choice ? null : choice.speedMmPerS;
};

/** The rules that a drawn study breaks: the answer before an order, and after it. */
export const brokenRules = (seed: number): readonly BrokenRule[] => {
  const { before, order } = drawCounted(seededRandom(seed));
  const study = { ...before, tallies: [...before.tallies, order] };
  const after = speedOf(study);
  const anythingOut =
    study.tallies.some(({ out }) => out > 0) || study.cells.some(({ grade }) => grade === 'out');
  if (after === null) return anythingOut ? ['no-answer'] : [];
  const broken: BrokenRule[] = [];
  const powerPct = study.ask.powerPct ?? order.setting.powerPct;
  if (after > ceilingOfOrders(study, powerPct)) broken.push('at-a-failed-speed');
  const verdict = orderVerdict(order, study);
  const was = verdict === 'open' ? null : speedOf(before);
  if (was !== null && verdict === 'failed' && after > was) broken.push('bad-order-raised');
  if (was !== null && verdict === 'clean' && after < was) broken.push('clean-order-lowered');
  return broken;
};
