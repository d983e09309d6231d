import type { Machine } from '../../src/core/machine/machine.ts';
import type { CornerRule } from '../../src/core/motion/motionValues.ts';
import type { Setting } from '../../src/core/machine/setting.ts';
import { planPath } from '../../src/core/motion/planPath.ts';
import { speedAlong } from '../../src/core/motion/speedAlong.ts';
import { beamWork } from '../../src/core/proof/beamWork.ts';
import { lineInTime } from '../../src/core/proof/lineInTime.ts';
import { burnsAtRatio, verdictsOn, type PlaceVerdict } from '../../src/core/proof/placeVerdict.ts';
import { blurMm, slowedPlaces, tipMm } from '../../src/core/proof/slowedPlaces.ts';
import { slowedShare } from '../../src/core/proof/slowedStretches.ts';
import { seededRandom, type SeededRandom } from '../../src/num/seededRandom.ts';
import { inventDrawing } from '../motion/drawings.ts';
import { slowRuns, walkPlan } from './bruteForce.ts';

/** How the places of invented drawings come out by the tool, and by walking every line in steps of a few µm. */
export interface Agreement {
  readonly places: number;
  readonly agreeing: number;
  readonly withVerdict: Readonly<Record<PlaceVerdict, number>>;
  /** Slowed stretches of the walk that lie in no place of the tool. */
  readonly missedRuns: number;
  /** Places of 100 whose margin change is within 0.01 in ln speed. */
  readonly within1Pct: number;
}

const between = (random: SeededRandom, low: number, high: number): number =>
  low + (high - low) * random.uniform();

const inventMachine = (random: SeededRandom): { machine: Machine; setting: Setting } => {
  const powerPct = 20 + random.integer(50);
  const speedMmPerS = Math.round(2 * between(random, 6, 45)) / 2;
  const jump = between(random, 1, 14);
  const corner: CornerRule =
    random.uniform() < 0.5
      ? { rule: 'speed-jump', xMmPerS: jump, yMmPerS: jump }
      : { rule: 'junction-deviation', deviationMm: between(random, 0.005, 0.1) };
  return {
    machine: {
      maxPowerPct: 100,
      speedRangeMmPerS: [1, 100],
      ...(random.uniform() < 0.5 ? {} : { powerRampStartMmPerS: between(random, 0, 20) }),
      motion: {
        accelerationMmPerS2: between(random, 200, 3000),
        corner,
        travelSpeedMmPerS: 200,
      },
    },
    setting: {
      powerPct,
      minPowerPct: Math.max(1, Math.round(powerPct * between(random, 0.15, 1))),
      speedMmPerS,
      passes: 1,
    },
  };
};

/** Random drawings on random machines, each place held against random limits. */
export const measureAgreement = (drawings: number, seed: number): Agreement => {
  const random = seededRandom(seed);
  const counts = { 'not-through': 0, 'may-hang': 0, 'tips-burn': 0 };
  let [places, agreeing, missedRuns, within] = [0, 0, 0, 0];
  for (let n = 0; n < drawings; n += 1) {
    const { machine, setting } = inventMachine(random);
    const { motion } = machine;
    const work = beamWork(machine, setting);
    if (motion === undefined || work === null) continue;
    const { speedMmPerS: set } = setting;
    const powerExponent = between(random, 0.7, 1.3);
    const holdsMmPerS = set * between(random, 1, 1.06);
    const limits = {
      setMmPerS: set,
      holdsMmPerS,
      halfOutMmPerS: holdsMmPerS * between(random, 1.05, 1.2),
      burnsAtRatio,
    };
    const lines = inventDrawing(random).flatMap((move) =>
      move.kind === 'cut' ? [move.points] : [],
    );
    for (const points of lines.slice(0, 12)) {
      const plan = planPath(points, { speedMmPerS: set, ...motion });
      // As open lines: the seam of a loop is the same two ends.
      const found = slowedPlaces(
        lineInTime(speedAlong(plan), work, false),
        work,
        powerExponent,
        false,
      );
      const walked = walkPlan(plan, machine, setting);
      for (const run of slowRuns(walked, setting, powerExponent, { blurMm, tipMm, slowedShare })) {
        const own = found.filter(
          ({ fromMm, toMm }) => fromMm < run.toMm - 0.01 && toMm > run.fromMm + 0.01,
        );
        // A run of a step or two is what the walk rounds.
        if (run.toMm - run.fromMm < 0.02 && own.length === 0) continue;
        places += 1;
        if (own.length === 0) missedRuns += 1;
        const tool = {
          marginChange: Math.min(...own.map((place) => place.marginChange)),
          energyRatio: Math.max(...own.map((place) => place.energyRatio)),
        };
        const [says, walks] = [verdictsOn(tool, limits), verdictsOn(run, limits)];
        for (const verdict of walks) counts[verdict] += 1;
        if (says.join() === walks.join()) agreeing += 1;
        if (Math.abs(tool.marginChange - run.marginChange) < 0.01) within += 1;
      }
    }
  }
  return { places, agreeing, withVerdict: counts, missedRuns, within1Pct: (100 * within) / places };
};
