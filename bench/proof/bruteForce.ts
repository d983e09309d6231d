import { deliveryOf } from '../../src/core/tube/deliveredPower.ts';
import type { Machine } from '../../src/core/machine/machine.ts';
import type { Setting } from '../../src/core/machine/setting.ts';
import type { PathPlan } from '../../src/core/motion/planPath.ts';
import { rampedPowerPct } from '../../src/core/tube/powerRamp.ts';

/** A line gone along in steps so small that nothing needs to be integrated. */
export interface Walked {
  readonly atMm: Float64Array;
  readonly seconds: Float64Array;
  /** Delivered power times time, over delivered full power. */
  readonly workS: Float64Array;
  readonly speedMmPerS: Float64Array;
}

const stepMm = 0.0025;

/** Walks a plan in steps of time; at the corners the speed is taken from the plan, between them from the acceleration. */
export const walkPlan = (plan: PathPlan, machine: Machine, setting: Setting): Walked => {
  const [atMm, seconds, workS, speedMmPerS]: number[][] = [[0], [0], [0], [0]];
  const delivery = deliveryOf(machine);
  const full = delivery(setting.powerPct) ?? 1;
  const a = plan.limits.accelerationMmPerS2;
  let [at, time, work] = [0, 0, 0];
  plan.segmentMm.forEach((lengthMm, i) => {
    const [entry, exit] = [plan.speedMmPerS[i] ?? 0, plan.speedMmPerS[i + 1] ?? 0];
    const speedAfter = (mm: number): number =>
      Math.min(
        setting.speedMmPerS,
        Math.sqrt(entry * entry + 2 * a * mm),
        Math.sqrt(exit * exit + 2 * a * Math.max(0, lengthMm - mm)),
      );
    const steps = Math.ceil(lengthMm / stepMm);
    for (let k = 0; k < steps; k += 1) {
      const [from, to] = [(k * lengthMm) / steps, ((k + 1) * lengthMm) / steps];
      const [v0, v1] = [speedAfter(from), speedAfter(to)];
      const dt = (2 * (to - from)) / (v0 + v1);
      const sent = rampedPowerPct(setting, (v0 + v1) / 2, machine.powerRampStartMmPerS ?? 0);
      time += dt;
      work += (dt * Math.max(0, delivery(sent) ?? full)) / full;
      at += to - from;
      atMm?.push(at);
      seconds?.push(time);
      workS?.push(work);
      speedMmPerS?.push(v1);
    }
  });
  return {
    atMm: Float64Array.from(atMm ?? []),
    seconds: Float64Array.from(seconds ?? []),
    workS: Float64Array.from(workS ?? []),
    speedMmPerS: Float64Array.from(speedMmPerS ?? []),
  };
};

/** One unbroken slow stretch of a walk, with the weakest and the hottest of all windows that a walk has there. */
export interface SlowRun {
  readonly fromMm: number;
  readonly toMm: number;
  readonly marginChange: number;
  readonly energyRatio: number;
}

interface Lengths {
  readonly blurMm: number;
  readonly tipMm: number;
  readonly slowedShare: number;
}

/** Every window that begins at a step. */
export const slowRuns = (
  walked: Walked,
  { speedMmPerS: set }: Setting,
  powerExponent: number,
  { blurMm, tipMm, slowedShare }: Lengths,
): readonly SlowRun[] => {
  const { atMm, seconds, workS, speedMmPerS } = walked;
  const count = atMm.length;
  const whole = atMm.at(-1) ?? 0;
  const slow = (i: number): boolean => (speedMmPerS[i] ?? 0) < slowedShare * set;
  const runs: SlowRun[] = [];
  for (let i = 0; i < count; i += 1) {
    if (!slow(i)) continue;
    let end = i;
    while (end + 1 < count && slow(end + 1)) end += 1;
    const [fromMm, toMm] = [atMm[i] ?? 0, atMm[end] ?? 0];
    const middle = (fromMm + toMm) / 2;
    const long = toMm - fromMm > blurMm;
    let [marginChange, energyRatio] = [Infinity, 0];
    const [weakFrom, weakTo] = long
      ? [fromMm, toMm - blurMm]
      : [Math.max(0, middle - blurMm / 2), Math.max(0, middle - blurMm / 2)];
    windows(atMm, weakFrom, weakTo, blurMm, (k, j) => {
      const [t, w] = [(seconds[j] ?? 0) - (seconds[k] ?? 0), (workS[j] ?? 0) - (workS[k] ?? 0)];
      const length = (atMm[j] ?? 0) - (atMm[k] ?? 0);
      if (!(t > 0)) return;
      const change = powerExponent * Math.log(Math.max(1e-3, w / t)) - Math.log(length / t / set);
      marginChange = Math.min(marginChange, change);
    });
    const tip = Math.min(tipMm, whole);
    windows(
      atMm,
      Math.max(0, fromMm - tip),
      Math.max(0, Math.min(whole - tip, toMm)),
      tip,
      (k, j) => {
        const length = (atMm[j] ?? 0) - (atMm[k] ?? 0);
        if (length < tip - 2 * stepMm) return;
        energyRatio = Math.max(energyRatio, (((workS[j] ?? 0) - (workS[k] ?? 0)) * set) / length);
      },
    );
    runs.push({ fromMm, toMm, marginChange, energyRatio });
    i = end;
  }
  return runs;
};

/** All windows of a length whose start lies between two places, as pairs of steps. */
const windows = (
  atMm: Float64Array,
  fromMm: number,
  toMm: number,
  lengthMm: number,
  look: (first: number, last: number) => void,
): void => {
  let last = 0;
  let seen = false;
  for (let k = 0; k < atMm.length; k += 1) {
    const at = atMm[k] ?? 0;
    if (at < fromMm - 1e-9) continue;
    if (at > toMm + 1e-9 && seen) break;
    last = Math.max(last, k);
    while (last + 1 < atMm.length && (atMm[last] ?? 0) < at + lengthMm - 1e-9) last += 1;
    look(k, last);
    seen = true;
  }
};
