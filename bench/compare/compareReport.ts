import { effectBetween } from '../../src/core/compare/effectBetween.ts';
import { gainBetween } from '../../src/core/compare/gainBetween.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { howManyCells } from './howManyCells.ts';
import {
  asTwoConditions,
  cutBoth,
  fromThePriors,
  ordinaryWith,
  sixRungs,
  type Laying,
  type Truth,
} from './truths.ts';

const layings: readonly Laying[] = [
  { name: 'on one sheet, 12 cells a side', cellsASide: 12, sheets: 'together' },
  { name: 'on one sheet, 36 cells a side', cellsASide: 36, sheets: 'together' },
  { name: 'on a sheet each, 12 cells a side', cellsASide: 12, sheets: 'own' },
  { name: 'on a sheet each, 36 cells a side', cellsASide: 36, sheets: 'own' },
];

const share = (part: number, all: number): string => `${((100 * part) / all).toFixed(1)} %`;
const worthPct = 2;

interface Played {
  readonly inside: boolean;
  readonly said: number;
  readonly isTrue: boolean;
  readonly widthPct: number;
  readonly tells: boolean;
}

const play = (truth: Truth, laying: Laying, seed: number): Played => {
  const random = seededRandom(seed);
  const speeds = sixRungs(truth, random);
  const cut = cutBoth(truth, speeds, laying.cellsASide / 6, laying.sheets, random);
  const { gainPct, chances } = gainBetween(effectBetween(asTwoConditions(truth, cut)), worthPct);
  const truePct = 100 * Math.expm1(truth.gain);
  return {
    inside: truePct >= gainPct.low && truePct <= gainPct.high,
    said: chances.gains,
    isTrue: truePct > worthPct,
    widthPct: gainPct.high - gainPct.low,
    tells: gainPct.low > 0 || gainPct.high < 0,
  };
};

const bins = [0, 0.05, 0.2, 0.4, 0.6, 0.8, 0.95, 1.0000001] as const;

/** Comparisons of two conditions, measured against invented workshops whose truth is known. */
export const compareReport = function* (tests: number): Generator<string> {
  yield 'comparing two conditions; the 95 % interval should hold the truth in 93 to 97 %';
  const all: Played[] = [];
  for (const [k, laying] of layings.entries()) {
    const played = Array.from({ length: tests }, (_, i) =>
      play(fromThePriors(seededRandom(10_000 * k + i + 1)), laying, 500_000 + 10_000 * k + i),
    );
    all.push(...played);
    const inside = played.filter((one) => one.inside).length;
    const width = played.map(({ widthPct }) => widthPct).sort((a, b) => a - b)[tests >> 1] ?? 0;
    yield `  ${String(tests)} × ${laying.name}, truth from the priors: holds ${share(inside, tests)}, half are narrower than ${width.toFixed(0)} %`;
  }
  yield `  "more than ${String(worthPct)} % faster", what was said against how often it was so:`;
  for (const [i, from] of bins.slice(0, -1).entries()) {
    const within = all.filter(({ said }) => said >= from && said < (bins[i + 1] ?? 1));
    if (within.length === 0) continue;
    const said = within.reduce((sum, one) => sum + one.said, 0);
    const so = within.filter(({ isTrue }) => isTrue).length;
    yield `    said ${share(said, within.length)}, was so ${share(so, within.length)} of ${String(within.length)}`;
  }
  const few = Math.ceil(tests / 4);
  for (const gainPct of [0, 5, 10]) {
    for (const [k, laying] of layings.entries()) {
      const played = Array.from({ length: few }, (_, i) => {
        const seed = 900_000 + 10_000 * k + 100_000 * gainPct + i;
        return play(ordinaryWith(Math.log(1 + gainPct / 100))(seededRandom(seed)), laying, seed);
      });
      const inside = played.filter((one) => one.inside).length;
      const told = played.filter(({ tells }) => tells).length;
      yield `  ${String(few)} × ordinary workshop, truly ${String(gainPct)} % faster, ${laying.name}: holds ${share(inside, few)}, told from nothing ${share(told, few)}`;
    }
  }
  yield* howManyCells(few);
};
