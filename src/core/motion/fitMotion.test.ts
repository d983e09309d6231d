import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { CornerRule, MotionValues } from './motionValues.ts';
import { compileJob, lineSeconds, otherSeconds } from './compileJob.ts';
import { fitMotion, type MotionFit, type TimedJob } from './fitMotion.ts';
import { wholeJobTime, type JobMove } from './jobTime.ts';
import { jobsToTime } from './timedJobs.ts';

const machine = { speedRangeMmPerS: [1, 100] as const };
const motion: MotionValues = {
  accelerationMmPerS2: 700,
  corner: { rule: 'junction-deviation', deviationMm: 0.03 },
  travelSpeedMmPerS: 180,
  travelAccelerationMmPerS2: 1200,
  lineDelayS: 0.05,
  jobDelayS: 2,
};
const timesOf = (truth: MotionValues, count = 6): readonly TimedJob[] =>
  jobsToTime(machine, count).map(({ moves }) => ({
    moves,
    seconds: wholeJobTime(moves, truth).seconds,
  }));
const fitted = (jobs: readonly TimedJob[], rules?: readonly CornerRule['rule'][]): MotionFit => {
  const outcome = fitMotion(jobs, rules);
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value;
};

/** Not among the timed jobs: a gear at the speed of cutting sheet. */
const unseen: readonly JobMove[] = Array.from({ length: 5 }, (_, k) => ({
  kind: 'cut',
  points: Array.from({ length: 81 }, (__, i): [number, number] => {
    const [r, angle] = [i % 4 < 2 ? 20 : 24, (2 * Math.PI * i) / 80];
    return [60 * k + r * Math.cos(angle), 40 + r * Math.sin(angle)];
  }),
  speedMmPerS: 25,
  passes: 1,
}));

describe('the motion that timed jobs tell', () => {
  it('comes back from the times that it made, within what is common in a delay', () => {
    const fit = fitted(timesOf(motion));
    expect(fit.motion.corner.rule).toBe('junction-deviation');
    expect(fit.motion.accelerationMmPerS2 / 700).toBeCloseTo(1, 1);
    expect(fit.motion.travelSpeedMmPerS / 180).toBeCloseTo(1, 1);
    expect(fit.offPct).toBeLessThan(0.5);
    const truth = wholeJobTime(unseen, motion).seconds;
    expect(Math.abs(wholeJobTime(unseen, fit.motion).seconds / truth - 1)).toBeLessThan(0.01);
  });

  it('tells the corner rules apart where they show, and says so where they do not', () => {
    const fit = fitted(timesOf({ ...motion, accelerationMmPerS2: 200 }));
    expect(fit.motion.corner.rule).toBe('junction-deviation');
    expect(fit.cornerRuleIsTold).toBe(true);
    const jumps: CornerRule = { rule: 'speed-jump', xMmPerS: 8, yMmPerS: 8 };
    expect(fitted(timesOf({ ...motion, corner: jumps })).motion.corner.rule).toBe('speed-jump');
    // So quick that no corner costs anything.
    const quick = { ...motion, accelerationMmPerS2: 30_000 };
    expect(fitted(timesOf(quick)).cornerRuleIsTold).toBe(false);
  });

  it('says what three jobs leave open, and owns up to the wider error', () => {
    const three = fitted(timesOf(motion, 3));
    const six = fitted(timesOf(motion));
    expect(three.untold.length).toBeGreaterThan(six.untold.length);
    expect(three.motion.timeErrorPct ?? 0).toBeGreaterThan(six.motion.timeErrorPct ?? 0);
    // Jobs that never travel far say nothing of travel.
    const [, angles, , , ring, zigzag] = timesOf(motion);
    const still = fitted([angles, ring, zigzag].flatMap((job) => job ?? []));
    expect(still.untold).toContain('travelSpeed');
  });

  it('names two unknowns that the jobs cannot tell apart', () => {
    // One job three times: whatever the head takes longer for, each run takes longer by as much.
    const [, , , , , zigzag] = timesOf(motion);
    const same = fitted([zigzag, zigzag, zigzag].flatMap((job) => job ?? []));
    expect(same.notApart).toEqual([['acceleration', 'jobDelay']]);
    expect(fitted(timesOf(motion, 3)).notApart).toEqual([]);
  });

  it('does not mind in which order the jobs were timed', () => {
    const jobs = timesOf(motion);
    const there = fitted(jobs).motion;
    const back = fitted(jobs.toReversed()).motion;
    expect(back.accelerationMmPerS2 / there.accelerationMmPerS2).toBeCloseTo(1, 4);
    expect(back.travelSpeedMmPerS / there.travelSpeedMmPerS).toBeCloseTo(1, 4);
  });

  it('refuses too few jobs, times that no machine makes, and times that do not go together', () => {
    const jobs = timesOf(motion);
    expect(fitMotion(jobs.slice(0, 2))).toMatchObject({
      ok: false,
      problem: { code: 'motion-too-few-jobs' },
    });
    const long = jobs[3] ?? { moves: [], seconds: 0 };
    expect(fitMotion([...jobs.slice(0, 3), { ...long, seconds: 5 }])).toMatchObject({
      ok: false,
      problem: { code: 'motion-time-impossible', params: { job: 4 } },
    });
    expect(fitMotion(jobs.map((job) => ({ ...job, seconds: Number.NaN })))).toMatchObject({
      ok: false,
      problem: { code: 'motion-time-impossible' },
    });
    const odd = jobs.map(({ moves, seconds }, i) => ({
      moves,
      seconds: i === 4 ? 4 * seconds : seconds,
    }));
    expect(fitMotion(odd)).toMatchObject({
      ok: false,
      problem: { code: 'motion-times-disagree', params: { job: 5 } },
    });
  });
});

describe('a compiled job', () => {
  it('takes as long as the job itself, on any machine', () => {
    const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const anyMotion = fc.record({
      accelerationMmPerS2: figure(50, 5000),
      corner: fc.constantFrom<CornerRule>(
        { rule: 'junction-deviation', deviationMm: 0.02 },
        { rule: 'speed-jump', xMmPerS: 5, yMmPerS: 9 },
      ),
      travelSpeedMmPerS: figure(50, 500),
      lineDelayS: figure(0, 1),
      jobDelayS: figure(0, 5),
    });
    const moves: readonly JobMove[] = [
      ...jobsToTime(machine).flatMap((job) => job.moves),
      { kind: 'wait', seconds: 2 },
      { kind: 'travel', to: [5, 5] },
      { kind: 'travel', to: [90, 5], speedMmPerS: 20 },
      {
        kind: 'cut',
        points: [
          [0, 0],
          [9, 2],
        ],
        speedMmPerS: 20,
        passes: 2,
      },
      { kind: 'travel', to: [0, 0] },
    ];
    const job = compileJob(moves);
    fc.assert(
      fc.property(anyMotion, (values) => {
        const whole = wholeJobTime(moves, values).seconds;
        expect((lineSeconds(job, values) + otherSeconds(job, values)) / whole).toBeCloseTo(1, 9);
      }),
      { numRuns: 20 },
    );
  });
});

describe('the jobs to time', () => {
  it('stay on the bed and keep to the machine’s fastest speed', () => {
    const bed = { widthMm: 120, heightMm: 90 };
    for (const { moves } of jobsToTime({ bed, speedRangeMmPerS: [1, 30] })) {
      for (const move of moves) {
        if (move.kind !== 'cut') throw new Error('a job to time is made of lines');
        expect(move.speedMmPerS).toBeLessThanOrEqual(30);
        for (const [x, y] of move.points) {
          expect(x).toBeGreaterThanOrEqual(-1e-9);
          expect(y).toBeGreaterThanOrEqual(-1e-9);
          expect(x).toBeLessThanOrEqual(120);
          expect(y).toBeLessThanOrEqual(90);
        }
      }
    }
  });

  it('take 15 s to 3 min each on a slow and on a quick machine, so that a stopwatch will do', () => {
    for (const accelerationMmPerS2 of [300, 3000]) {
      for (const { seconds } of timesOf({ ...motion, accelerationMmPerS2 })) {
        expect(seconds).toBeGreaterThan(15);
        expect(seconds).toBeLessThan(180);
      }
    }
  });
});
