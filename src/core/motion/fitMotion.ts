import { leastSquares, type LeastSquaresFit, type Residuals } from '../../num/leastSquares.ts';
import type { Matrix } from '../../num/symmetricMatrix.ts';
import type { CornerRule, MotionValues } from './motionValues.ts';
import { lengthMm } from '../path/polyline.ts';
import { done, refused, type Outcome } from '../problem.ts';
import { compileJob, lineSeconds, otherSeconds, type CompiledJob } from './compileJob.ts';
import type { JobMove } from './jobTime.ts';
import { jobsToTime } from './timedJobs.ts';
import { believedUnder, motionFrom, motionUnknowns, type MotionUnknown } from './motionUnknowns.ts';

/** A job that was run, and how long it took. */
export interface TimedJob {
  readonly moves: readonly JobMove[];
  readonly seconds: number;
}

export interface MotionFit {
  /** With `timeErrorPct`: how far a time worked out with it may be off, as a standard deviation. */
  readonly motion: MotionValues;
  /** What the fitted machine would have taken over each job. */
  readonly jobs: readonly {
    readonly toldS: number;
    readonly computedS: number;
    readonly offPct: number;
  }[];
  /** Root mean square of `offPct`. */
  readonly offPct: number;
  /** Whether the jobs tell the one corner rule from the other. */
  readonly cornerRuleIsTold: boolean;
  /** Unknowns of which the jobs say little: what stands for them is what is common. */
  readonly untold: readonly MotionUnknown[];
  /** Unknowns of which the jobs tell only the two together. */
  readonly notApart: readonly (readonly [MotionUnknown, MotionUnknown])[];
  readonly iterations: number;
}

/** A stopwatch and a display of whole seconds, in s; and what one run differs from the next. */
const readingSd = 0.3;
const runSd = 0.01;
/** What no planner of this kind gets right of another's controller, as a share of the time. Common practice, no source. */
const ruleSd = 0.01;
const leastJobs = 3;
/** A misfit beyond this says that a time was noted wrongly, or the machine moves by other rules. */
const mostOffPct = 15;
/** By so much must the sum of squares of one corner rule be worse to be ruled out: 4 is two standard deviations. */
const ruledOut = 4;

/**
 * What a machine's motion must be for jobs to take as long as they did: least squares on relative errors, between bounds,
 * drawn weakly to what is common. Both corner rules are tried unless one is asked for. Refuses:
 * `motion-too-few-jobs`, `motion-time-impossible` (shorter than length over speed), `motion-times-disagree`.
 * Some 30 plans of all jobs a rule and unknown: ~0.1 s for six jobs.
 */
export const fitMotion = (
  jobs: readonly TimedJob[],
  rules: readonly CornerRule['rule'][] = ['junction-deviation', 'speed-jump'],
): Outcome<MotionFit> => {
  if (jobs.length < leastJobs) {
    return refused('motion-too-few-jobs', { jobs: jobs.length, least: leastJobs });
  }
  const timings = jobs.map(({ moves, seconds }): Timing => ({ job: compileJob(moves), seconds }));
  for (const [i, { job, seconds }] of timings.entries()) {
    const leastS = leastSeconds(job);
    if (!(seconds + 3 * readingSd >= leastS * (1 - 3 * runSd))) {
      return refused('motion-time-impossible', {
        job: i + 1,
        seconds,
        leastSeconds: Number(leastS.toFixed(1)),
      });
    }
  }
  const solved = rules
    .flatMap((rule) => solveUnder(rule, timings))
    .sort((a, b) => a.fit.rss - b.fit.rss);
  const [best, other] = solved;
  if (best === undefined) return refused('motion-times-disagree', { job: 1, offPct: 100 });
  const told = describe(best, timings);
  if (told.offPct > mostOffPct) {
    const worst = told.jobs.map(({ offPct }) => Math.abs(offPct));
    const job = worst.indexOf(Math.max(...worst)) + 1;
    return refused('motion-times-disagree', { job, offPct: Math.round(told.offPct) });
  }
  return done({
    ...told,
    cornerRuleIsTold: other === undefined || other.fit.rss - best.fit.rss > ruledOut,
  });
};

interface Timing {
  readonly job: CompiledJob;
  readonly seconds: number;
}

/** With unlimited acceleration and travel: no machine is quicker. */
const leastSeconds = ({ lines, waitS }: CompiledJob): number =>
  lines.reduce(
    (sum, { points, speedMmPerS, count }) => sum + (count * lengthMm(points)) / speedMmPerS,
    waitS,
  );

interface Solved {
  readonly rule: CornerRule['rule'];
  readonly fit: LeastSquaresFit;
}

/** From a slow, a common and a quick machine: corners and acceleration stand in for each other, and there may be two valleys. */
const solveUnder = (rule: CornerRule['rule'], jobs: readonly Timing[]): readonly Solved[] => {
  const beliefs = believedUnder(rule);
  const bounds = {
    least: beliefs.map(({ least }) => least),
    most: beliefs.map(({ most }) => most),
  };
  const found = [-1, 0, 1].flatMap((lean): readonly Solved[] => {
    const start = beliefs.map(({ mean, sd }, i) => (i === 0 ? mean + lean * sd : mean));
    const fit = leastSquares((unknowns) => residuals(rule, jobs, unknowns), start, bounds);
    return fit.ok ? [{ rule, fit }] : [];
  });
  return found.sort((a, b) => a.fit.rss - b.fit.rss).slice(0, 1);
};

/** One residual a job, then one an unknown that draws it to what is common; in standard deviations. */
const residuals = (
  rule: CornerRule['rule'],
  jobs: readonly Timing[],
  unknowns: readonly number[],
): Residuals => {
  const beliefs = believedUnder(rule);
  const here = computed(rule, jobs, unknowns);
  let slopes: Matrix | undefined;
  return {
    values: [
      ...jobs.map(({ seconds }, i) => ((here[i] ?? NaN) / seconds - 1) / sdOf(seconds)),
      ...beliefs.map(({ mean, sd }, i) => ((unknowns[i] ?? NaN) - mean) / sd),
    ],
    // Only where a step begins are slopes asked for.
    get slopes() {
      slopes ??= [
        ...slopesOf(rule, jobs, unknowns).map((row, i) => {
          const { seconds } = jobs[i] ?? { seconds: NaN };
          return row.map((slope) => slope / seconds / sdOf(seconds));
        }),
        ...beliefs.map(({ sd }, i) => beliefs.map((_, k) => (i === k ? 1 / sd : 0))),
      ];
      return slopes;
    },
  };
};

const sdOf = (seconds: number): number => Math.hypot(runSd, readingSd / seconds);

/** Seconds of each job on the machine that the unknowns describe. */
const computed = (
  rule: CornerRule['rule'],
  jobs: readonly Pick<Timing, 'job'>[],
  unknowns: readonly number[],
): readonly number[] => {
  const motion = motionFrom(rule, unknowns);
  return jobs.map(({ job }) => lineSeconds(job, motion) + otherSeconds(job, motion));
};

const step = 1e-4;

/** Seconds by unknown, by central differences: one row a job. Lines are planned anew only for what they depend on. */
const slopesOf = (
  rule: CornerRule['rule'],
  jobs: readonly Pick<Timing, 'job'>[],
  unknowns: readonly number[],
): Matrix =>
  jobs.map(({ job }) =>
    motionUnknowns.map((name, k) => {
      const at = (by: number): number => {
        const motion = motionFrom(
          rule,
          unknowns.map((value, i) => (i === k ? value + by : value)),
        );
        const bends = name === 'acceleration' || name === 'corner';
        return (bends ? lineSeconds(job, motion) : 0) + otherSeconds(job, motion);
      };
      return (at(step) - at(-step)) / (2 * step);
    }),
  );

/** An unknown is told when the jobs leave less than half of the doubt that there was. */
const toldShare = 0.5;
const togetherFrom = 0.95;

const describe = (
  { rule, fit }: Solved,
  jobs: readonly Timing[],
): Omit<MotionFit, 'cornerRuleIsTold'> => {
  const beliefs = believedUnder(rule);
  const covariance = fit.unscaledCovariance;
  const sd = covariance.map((row, i) => Math.sqrt(row[i] ?? NaN));
  const seconds = computed(rule, jobs, fit.parameters);
  const compared = jobs.map(({ seconds: toldS }, i) => {
    const computedS = seconds[i] ?? NaN;
    return { toldS, computedS, offPct: 100 * (computedS / toldS - 1) };
  });
  const offPct = Math.sqrt(mean(compared.map((job) => job.offPct ** 2)));
  const doubt = doubtOver(typicalJobs, { rule, fit });
  return {
    motion: {
      ...motionFrom(rule, fit.parameters),
      timeErrorPct: Math.hypot(offPct, 100 * Math.hypot(ruleSd, doubt)),
    },
    jobs: compared,
    offPct,
    untold: motionUnknowns.filter((_, i) => (sd[i] ?? NaN) > toldShare * (beliefs[i]?.sd ?? NaN)),
    notApart: pairs()
      .filter(
        ([i, k]) =>
          Math.abs(covariance[i]?.[k] ?? NaN) > togetherFrom * (sd[i] ?? NaN) * (sd[k] ?? NaN) &&
          (sd[i] ?? NaN) > 0,
      )
      .map(([i, k]) => [nameOf(i), nameOf(k)] as const),
    iterations: fit.iterations,
  };
};

/** What drawings are made of, at the speeds of cutting sheet: whatever the jobs leave open shows in one of these. */
const typicalJobs = [15, 40].flatMap((fastest) =>
  jobsToTime({ speedRangeMmPerS: [1, fastest] }).map(({ moves }) => ({ job: compileJob(moves) })),
);

/** How far the doubt that is left about the unknowns puts a time off: a standard deviation, as a share of it. */
const doubtOver = (jobs: typeof typicalJobs, { rule, fit }: Solved): number => {
  const seconds = computed(rule, jobs, fit.parameters);
  const slopes = slopesOf(rule, jobs, fit.parameters);
  return Math.sqrt(
    mean(slopes.map((row, i) => quadratic(fit.unscaledCovariance, row) / (seconds[i] ?? NaN) ** 2)),
  );
};

const nameOf = (i: number): MotionUnknown => motionUnknowns[i] ?? 'acceleration';

const pairs = (): readonly (readonly [number, number])[] =>
  motionUnknowns.flatMap((_, i) =>
    motionUnknowns.flatMap((__, k): readonly (readonly [number, number])[] =>
      k > i ? [[i, k]] : [],
    ),
  );

const quadratic = (matrix: Matrix, row: readonly number[]): number =>
  matrix.reduce(
    (sum, line, i) =>
      sum + line.reduce((inner, value, k) => inner + (row[i] ?? NaN) * value * (row[k] ?? NaN), 0),
    0,
  );

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
