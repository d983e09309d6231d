import { compareConditions } from '../../src/core/compare/compareConditions.ts';
import { effectBetween } from '../../src/core/compare/effectBetween.ts';
import { gainBetween } from '../../src/core/compare/gainBetween.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { asTwoConditions, cutBoth, fromThePriors, sixRungs } from './truths.ts';

const share = (part: number, all: number): string => `${((100 * part) / all).toFixed(1)} %`;

/**
 * A first card of 12 cells a side, which says how many cells would tell 5 %; then a fresh card of so many, at the rungs that
 * it names. It should tell in 80 of 100 workshops that truly gain 5 %.
 */
export const howManyCells = function* (tests: number): Generator<string> {
  const told = { yes: 0, asked: 0, none: 0, cells: [] as number[] };
  for (let i = 0; i < tests; i += 1) {
    const random = seededRandom(7_000_000 + i);
    const truth = { ...fromThePriors(random), gain: Math.log(1.05) };
    const first = cutBoth(truth, sixRungs(truth, random), 2, 'together', random);
    const said = compareConditions(asTwoConditions(truth, first));
    const cells = said.ok ? said.value.settling.cellsASide : null;
    const speeds = said.ok ? said.value.settling.settings.map((s) => s.speedMmPerS) : [];
    if (cells === null) {
      told.none += 1;
      continue;
    }
    const each = cells / speeds.length;
    // The last cells fall on some rungs only.
    const whole = speeds.map((_, k) => Math.floor(each * (k + 1)) - Math.floor(each * k));
    const cut = speeds.map((speed, k) => [speed, whole[k] ?? 0] as const);
    const asked = cut.flatMap(([speed, count]) => Array.from({ length: count }, () => speed));
    const second = cutBoth(truth, asked, 1, 'together', random);
    const { gainPct } = gainBetween(effectBetween(asTwoConditions(truth, second)), 2);
    told.asked += 1;
    told.cells.push(cells);
    if (gainPct.low > 0) told.yes += 1;
  }
  const middle = told.cells.sort((a, b) => a - b)[told.cells.length >> 1] ?? 0;
  yield `  how many cells a side tell 5 % from nothing 8 times in 10: half the answers are below ${String(middle)}; ${share(told.none, tests)} had none below 400`;
  yield `    so many cut afresh told it in ${share(told.yes, told.asked)} of ${String(told.asked)} workshops (target 80 %)`;
};
