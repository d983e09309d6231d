import type { Machine } from '../machine/machine.ts';
import type { MotionValues } from '../machine/motionValues.ts';
import { jobTime, type JobMove, type JobTime } from '../motion/jobTime.ts';
import { timeBand, assumedMotion } from '../motion/timeBand.ts';
import type { TimeCode } from '../motion/codes.ts';
import { distanceMm, type Point } from '../path/point.ts';
import { refused, done, type Outcome } from '../problem.ts';
import { toldSetting } from './toldSetting.ts';
import type { PathLine, Toolpath, Unlit } from './toolpath.ts';

/** How long a machine takes over a file. */
export interface ToolpathTime extends Omit<JobTime, 'at'> {
  readonly lowSeconds: number;
  readonly highSeconds: number;
  readonly motion: 'known' | 'assumed';
  /** By layer, in the order in which each begins, travel to its lines included. */
  readonly layers: readonly { readonly name: string; readonly seconds: number }[];
}

/**
 * The time of a file. A program says its speeds, travels and pauses; a drawing says speeds where its layers spell them,
 * and for the others `speedMmPerS` stands. Travel begins at zero. Refuses `time-nothing-cut`, and `time-speed-unknown`
 * where lines have no speed. O(points).
 */
export const toolpathTime = (
  toolpath: Toolpath,
  { motion }: Machine,
  speedMmPerS?: number,
): Outcome<ToolpathTime> => {
  const steps = stepsOf(toolpath, speedMmPerS);
  if (toolpath.lines.length === 0) return refuse('time-nothing-cut');
  const unsaid = steps.filter(({ move }) => move === undefined).length;
  if (unsaid > 0) return refuse('time-speed-unknown', { lines: unsaid });
  const onMachine = (values: MotionValues): JobTime => totalOf(timesOf(steps, values), values);
  const { seconds, cuttingS, cornersS, travelS, delaysS, cutMm, travelMm } = onMachine(
    motion ?? assumedMotion.likely,
  );
  const layers = new Map<string, number>();
  for (const { layer, time } of timesOf(steps, motion ?? assumedMotion.likely)) {
    layers.set(layer, (layers.get(layer) ?? 0) + time.seconds);
  }
  return done({
    ...{ seconds, cuttingS, cornersS, travelS, delaysS, cutMm, travelMm },
    ...timeBand(motion, (values) => onMachine(values).seconds),
    layers: [...layers].map(([name, layerSeconds]) => ({ name, seconds: layerSeconds })),
  });
};

const refuse = (code: TimeCode, params: Readonly<Record<string, number>> = {}): Outcome<never> =>
  refused(code, params);

interface Step {
  readonly layer: string;
  /** Undefined: nobody said how fast. */
  readonly move: JobMove | undefined;
}

/** Lines with what comes before each. What a program does after its last line goes with that line's layer. */
const stepsOf = (toolpath: Toolpath, otherwise: number | undefined): readonly Step[] => {
  const { lines, unlit = [] } = toolpath;
  const steps: Step[] = [];
  let next = 0;
  const unlitBefore = (i: number, layer: string): number => {
    const from = next;
    for (; next < unlit.length && (unlit[next]?.beforeLine ?? 0) <= i; next += 1) {
      const step = unlit[next];
      if (step !== undefined) steps.push({ layer, move: moveOf(step) });
    }
    return next - from;
  };
  let last: Cut | undefined;
  lines.forEach((line, i) => {
    const layer = line.spelt?.label ?? line.layer ?? line.colour ?? '';
    const isParted = unlitBefore(i, layer) > 0;
    const cut = cutOf(toolpath, line, otherwise);
    if (!isParted && line.told !== undefined && last && cut && goesOn(last, cut)) {
      for (const point of cut.points.slice(1)) last.points.push(point);
      return;
    }
    steps.push({ layer, move: cut });
    last = cut;
  });
  unlitBefore(lines.length, steps.at(-1)?.layer ?? '');
  return steps;
};

const moveOf = (step: Unlit): JobMove =>
  step.kind === 'wait'
    ? step
    : {
        kind: 'travel',
        to: step.to,
        ...(step.speedMmPerS === undefined ? {} : { speedMmPerS: step.speedMmPerS }),
      };

type Cut = Extract<JobMove, { readonly kind: 'cut' }> & { readonly points: Point[] };

const cutOf = (
  toolpath: Toolpath,
  line: PathLine,
  otherwise: number | undefined,
): Cut | undefined => {
  const told = toldSetting(toolpath, line);
  const speedMmPerS = told?.speedMmPerS ?? otherwise;
  return speedMmPerS === undefined
    ? undefined
    : {
        kind: 'cut',
        points: [...line.points],
        speedMmPerS,
        passes: told?.passes ?? line.passes,
      };
};

/** In a program, lines that go on at one speed are run without a stop, even where the power changes between them. */
const goesOn = (last: Cut, cut: Cut): boolean =>
  last.speedMmPerS === cut.speedMmPerS &&
  last.passes === 1 &&
  cut.passes === 1 &&
  touches(last.points.at(-1), cut.points[0]);

const touches = (a: Point | undefined, b: Point | undefined): boolean =>
  a !== undefined && b !== undefined && distanceMm(a, b) < 1e-6;

const timesOf = (
  steps: readonly Step[],
  motion: MotionValues,
): readonly { readonly layer: string; readonly time: JobTime }[] => {
  let head: Point = [0, 0];
  return steps.map(({ layer, move }) => {
    const time = jobTime(move === undefined ? [] : [move], motion, head);
    head = time.at;
    return { layer, time };
  });
};

const totalOf = (
  times: readonly { readonly time: JobTime }[],
  { jobDelayS = 0 }: MotionValues,
): JobTime => {
  const sum = (part: Exclude<keyof JobTime, 'at'>): number =>
    times.reduce((total, { time }) => total + time[part], 0);
  return {
    seconds: sum('seconds') + jobDelayS,
    cuttingS: sum('cuttingS'),
    cornersS: sum('cornersS'),
    travelS: sum('travelS'),
    delaysS: sum('delaysS') + jobDelayS,
    cutMm: sum('cutMm'),
    travelMm: sum('travelMm'),
    at: times.at(-1)?.time.at ?? [0, 0],
  };
};
