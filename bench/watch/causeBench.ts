import { fit } from '../../src/core/cutmodel/fit.ts';
import type { CutStudy } from '../../src/core/cutmodel/cutStudy.ts';
import { speedAt } from '../../src/core/cutmodel/recommend.ts';
import { ordinaryTraits, virtualWorkshop } from '../../src/core/virtual/virtualWorkshop.ts';
import {
  causePriors,
  causes,
  changeSizes,
  laserOrWood,
  type Cause,
  type LaserOrWood,
} from '../../src/core/watch/laserOrWood.ts';
import { stripSettings } from '../../src/core/watch/stripSettings.ts';
import { seededRandom, type SeededRandom } from '../../src/num/seededRandom.ts';
import { cutBoard, cutCells, pct } from './cutStrips.ts';

interface Played {
  readonly truth: Cause;
  readonly said: LaserOrWood;
}

const drawCause = (random: SeededRandom): Cause => {
  let left = random.uniform();
  return causes.find((cause) => (left -= causePriors[cause]) < 0) ?? 'neither';
};

/** The truth is drawn as the model believes: what is measured is whether its shares are right where it is. */
const play = (oldCells: 24 | 60, seed: number): Played | null => {
  const random = seededRandom(seed);
  const traits = ordinaryTraits(random);
  const shopAt = (shift: number) =>
    virtualWorkshop({ ...traits, v50MmPerS: traits.v50MmPerS * Math.exp(shift) }, random);
  const old = Array.from({ length: oldCells / 12 }, (_, n) =>
    cutBoard(shopAt(0), { batch: 'old', sheet: `board ${String(n)}` }, random),
  ).flat();
  const powerPct = traits.typicalPowerPct;
  const study: CutStudy = {
    machine: { maxPowerPct: 90, speedRangeMmPerS: [0.5, 200] },
    stock: { material: traits.material, thicknessMm: traits.thicknessMm },
    cells: old,
    tallies: [],
    promise: { outOf100: 97, surePct: 95, partLengthMm: 60, for: 'batch' },
    ask: { powerPct },
  };
  const fitted = fit(study);
  const speedMmPerS = speedAt(fitted, powerPct);
  if (speedMmPerS === null) return null;
  const proven = { powerPct, speedMmPerS, passes: 1 };
  const settings = stripSettings(fit({ ...study, cells: [], history: old }), proven);
  const truth = drawCause(random);
  const { laserSd, laserLosesShare, woodSd } = changeSizes;
  const size = Math.abs(laserSd * random.normal());
  const ell =
    truth === 'laser' || truth === 'both'
      ? (random.uniform() < laserLosesShare ? -1 : 1) * size
      : 0;
  const wood = truth === 'wood' || truth === 'both' ? woodSd * random.normal() : 0;
  return {
    truth,
    said: laserOrWood(fitted, {
      reference: cutCells(shopAt(ell), settings, { batch: 'old', sheet: 'kept back' }),
      newBatch: cutCells(shopAt(ell + wood), settings, { batch: 'new', sheet: 'strip' }),
    }),
  };
};

const bins = [0, 0.2, 0.4, 0.6, 0.8, 1.0001];

/** Laser or wood from two strips of six cells, measured: are the shares right, and how often is the right cause pointed at. */
export const causeBench = function* (runs: number): Generator<string> {
  yield 'laser or wood, from two strips of six cells';
  for (const oldCells of [60, 24] as const) {
    const played = Array.from({ length: runs }, (_, k) => play(oldCells, 60_000 + k)).filter(
      (one) => one !== null,
    );
    const clear = played.filter(({ said }) => said.pointsAt !== 'unclear');
    const right = clear.filter(({ said, truth }) => said.pointsAt === truth).length;
    yield `  ${String(played.length)} × ${String(oldCells)} old cells: points at one cause ${pct(clear.length, played.length)}, rightly ${pct(right, clear.length)}`;
    for (const [i, from] of bins.slice(0, -1).entries()) {
      const to = bins[i + 1] ?? 1;
      const pairs = played.flatMap(({ said, truth }) =>
        causes
          .filter((cause) => said.share[cause] >= from && said.share[cause] < to)
          .map((cause) => ({ share: said.share[cause], hit: cause === truth })),
      );
      const hits = pairs.filter(({ hit }) => hit).length;
      const mean = pairs.reduce((sum, { share }) => sum + share, 0) / pairs.length;
      yield `    shares of ${from.toFixed(1)} to ${Math.min(1, to).toFixed(1)}: ${(100 * mean).toFixed(0)} % said, ${pct(hits, pairs.length)} true (${String(pairs.length)})`;
    }
    for (const cause of causes) {
      const of = played.filter(({ truth }) => truth === cause);
      const mean = of.reduce((sum, { said }) => sum + said.share[cause], 0) / of.length;
      const pointed = of.filter(({ said }) => said.pointsAt === cause).length;
      yield `    truly ${cause}: share ${(100 * mean).toFixed(0)} % on average, pointed at ${pct(pointed, of.length)}`;
    }
  }
};
