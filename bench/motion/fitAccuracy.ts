import type { CornerRule, MotionValues } from '../../src/core/motion/motionValues.ts';
import { fitMotion } from '../../src/core/motion/fitMotion.ts';
import { wholeJobTime } from '../../src/core/motion/jobTime.ts';
import { jobsToTime } from '../../src/core/motion/timedJobs.ts';
import { seededRandom, type SeededRandom } from '../../src/num/seededRandom.ts';
import {
  axisByAxis,
  gentleStart,
  inventMotion,
  plain,
  stopsAtCorners,
  type Controller,
} from './controllers.ts';
import { inventDrawing } from './drawings.ts';

/** How near a machine fitted from timed jobs comes to the true time of drawings that it has not seen. */
export interface FitAccuracy {
  readonly refused: number;
  /** Over all drawings of all machines, in per cent of the true time, regardless of sign. */
  readonly medianOffPct: number;
  readonly offPctOf95: number;
  readonly within3Pct: number;
  /** Share of machines with all ten drawings within 3 %. */
  readonly allWithin3Pct: number;
  /** Share of drawings within two standard deviations as the fit itself states them. */
  readonly inBandPct: number;
}

interface Trial {
  readonly name: string;
  readonly jobs: number;
  readonly controller: (motion: MotionValues, random: SeededRandom) => Controller;
  /** Keeps the fit to the corner rule that the machine does not follow. */
  readonly otherRule?: true;
}

const timingNoise = 0.01;
const drawingsEach = 10;

export const fitTrials: readonly Trial[] = [
  { name: 'six jobs, planner’s own rules', jobs: 6, controller: plain },
  { name: 'three jobs, planner’s own rules', jobs: 3, controller: plain },
  { name: 'six jobs, kept to the other corner rule', jobs: 6, controller: plain, otherRule: true },
  {
    name: 'six jobs, acceleration that rises over 20–80 ms',
    jobs: 6,
    controller: (motion, random) => gentleStart(motion, 0.02 + 0.06 * random.uniform()),
  },
  {
    name: 'six jobs, y accelerates at 40–100 % of x',
    jobs: 6,
    controller: (motion, random) => axisByAxis(motion, 0.4 + 0.6 * random.uniform()),
  },
  {
    name: 'six jobs, stops at corners sharper than 20–60°',
    jobs: 6,
    controller: (motion, random) =>
      stopsAtCorners(motion, (20 + 40 * random.uniform()) * (Math.PI / 180)),
  },
];

/** So many invented machines, timed and fitted; the same for the same number. */
export const measureFit = (trial: Trial, machines: number): FitAccuracy => {
  const offs: number[] = [];
  let [inBand, allWithin, refusals] = [0, 0, 0];
  for (let seed = 1; seed <= machines; seed += 1) {
    const random = seededRandom(seed);
    const motion = inventMotion(random);
    const controller = trial.controller(motion, random);
    const timed = jobsToTime({ speedRangeMmPerS: [1, 100] }, trial.jobs).map(({ moves }) => ({
      moves,
      seconds: controller(moves) * (1 + timingNoise * random.normal()),
    }));
    const fitted = fitMotion(timed, trial.otherRule ? [otherThan(motion.corner)] : undefined);
    const drawings = Array.from({ length: drawingsEach }, () => inventDrawing(random));
    if (!fitted.ok) {
      refusals += 1;
      continue;
    }
    const found = fitted.value.motion;
    const own = drawings.map((moves) => wholeJobTime(moves, found).seconds / controller(moves) - 1);
    offs.push(...own.map((off) => 100 * Math.abs(off)));
    inBand += own.filter((off) => 100 * Math.abs(off) <= 2 * (found.timeErrorPct ?? 0)).length;
    allWithin += own.every((off) => Math.abs(off) <= 0.03) ? 1 : 0;
  }
  offs.sort((a, b) => a - b);
  const share = (count: number, of: number): number => (100 * count) / of;
  return {
    refused: refusals,
    medianOffPct: offs[offs.length >> 1] ?? Number.NaN,
    offPctOf95: offs[Math.floor(0.95 * offs.length)] ?? Number.NaN,
    within3Pct: share(offs.filter((off) => off <= 3).length, offs.length),
    allWithin3Pct: share(allWithin, machines),
    inBandPct: share(inBand, offs.length),
  };
};

const otherThan = ({ rule }: CornerRule): CornerRule['rule'] =>
  rule === 'speed-jump' ? 'junction-deviation' : 'speed-jump';
