import type { Machine } from '../machine/machine.ts';
import type { MotionValues } from '../motion/motionValues.ts';
import { jobTime, type JobMove, type JobTime } from '../motion/jobTime.ts';
import { timeBand, assumedMotion } from '../motion/timeBand.ts';
import { distanceMm, type Point } from '../path/point.ts';
import { isClosed, lengthMm, type Polyline } from '../path/polyline.ts';
import { refused, done, type Outcome } from '../problem.ts';
import { fileSetting } from './fileSetting.ts';
import type { PathLine, ModalState, Toolpath, Unlit } from './toolpath.ts';

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
  if (toolpath.lines.length === 0 && toolpath.disarmed === undefined)
    return refused('time-nothing-cut');
  const unsaid = steps.filter(({ move }) => move === undefined).length;
  if (unsaid > 0) return refused('time-speed-unknown', { lines: unsaid });
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

interface Step {
  readonly layer: string;
  /** Undefined: nobody said how fast. */
  readonly move: JobMove | undefined;
  /** How much of a run is fed through with the beam at S0, mm. */
  unlitMm: number;
}

/**
 * Lines with what comes before each. A program runs on without a stop while the feed stays and no word for the beam comes
 * between: through passes, changes of power, and S0 (engraving, bridges). What it does after its last line goes with that
 * line's layer.
 */
const stepsOf = (toolpath: Toolpath, otherwise: number | undefined): readonly Step[] => {
  const { lines, unlit = [] } = toolpath;
  const steps: Step[] = [];
  let head: Point = [0, 0];
  let run: Run | undefined;
  let next = 0;

  const goOn = (feed: Feed): boolean => {
    if (run?.speedMmPerS !== feed.speedMmPerS || run.beam !== feed.beam) return false;
    if (!touches(run.points.at(-1), feed.points[0])) return false;
    for (const point of feed.points.slice(1)) run.points.push(point);
    run.step.unlitMm += feed.unlitMm;
    return true;
  };
  const feedOn = (layer: string, feed: Feed): void => {
    head = feed.points.at(-1) ?? head;
    if (goOn(feed)) return;
    const points = [...feed.points];
    const { speedMmPerS, unlitMm, beam } = feed;
    const step: Step = { layer, move: { kind: 'cut', points, speedMmPerS, passes: 1 }, unlitMm };
    steps.push(step);
    run = { points, speedMmPerS, beam, step };
  };
  const unlitBefore = (i: number, layer: string): void => {
    for (; next < unlit.length && (unlit[next]?.beforeLine ?? NaN) <= i; next += 1) {
      const step = unlit[next];
      if (step === undefined) continue;
      if (step.kind === 'travel' && step.speedMmPerS !== undefined && step.beam !== undefined) {
        const points = [head, step.to];
        const { speedMmPerS, beam } = step;
        feedOn(layer, { points, speedMmPerS, beam, unlitMm: lengthMm(points) });
        continue;
      }
      run = undefined;
      if (step.kind === 'travel') head = step.to;
      steps.push({ layer, move: moveOf(step), unlitMm: 0 });
    }
  };
  lines.forEach((line, i) => {
    const layer = line.spelt?.label ?? line.layer ?? line.colour ?? '';
    unlitBefore(i, layer);
    const { modal: told } = line;
    if (told === undefined) {
      run = undefined;
      steps.push({ layer, move: cutOf(toolpath, line, otherwise), unlitMm: 0 });
      return;
    }
    const { speedMmPerS, beam } = told;
    feedOn(layer, { points: inPasses(line), speedMmPerS, beam, unlitMm: 0 });
  });
  unlitBefore(lines.length, steps.at(-1)?.layer ?? '');
  return steps;
};

/** What a program feeds through in one go. */
interface Feed {
  readonly points: Polyline;
  readonly speedMmPerS: number;
  readonly beam: ModalState['beam'] | 'off';
  readonly unlitMm: number;
}

interface Run extends Pick<Feed, 'speedMmPerS' | 'beam'> {
  readonly points: Point[];
  readonly step: Step;
}

/** Round again where the line is closed, there and back where it is not. */
const inPasses = ({ points, passes }: PathLine): Polyline => {
  const back = isClosed(points) ? points : points.toReversed();
  return Array.from({ length: passes }, (_, pass) => {
    const way = pass % 2 === 0 ? points : back;
    return pass === 0 ? way : way.slice(1);
  }).flat();
};

const moveOf = (step: Unlit): JobMove =>
  step.kind === 'wait'
    ? step
    : {
        kind: 'travel',
        to: step.to,
        ...(step.speedMmPerS === undefined ? {} : { speedMmPerS: step.speedMmPerS }),
      };

const cutOf = (
  toolpath: Toolpath,
  line: PathLine,
  otherwise: number | undefined,
): JobMove | undefined => {
  const told = fileSetting(toolpath, line);
  const speedMmPerS = told?.speedMmPerS ?? otherwise;
  return speedMmPerS === undefined
    ? undefined
    : { kind: 'cut', points: line.points, speedMmPerS, passes: told?.passes ?? line.passes };
};

const touches = (a: Point | undefined, b: Point | undefined): boolean =>
  a !== undefined && b !== undefined && distanceMm(a, b) < 1e-6;

const timesOf = (
  steps: readonly Step[],
  motion: MotionValues,
): readonly { readonly layer: string; readonly time: JobTime }[] => {
  let head: Point = [0, 0];
  return steps.map(({ layer, move, unlitMm }) => {
    const time = jobTime(move === undefined ? [] : [move], motion, head);
    head = time.at;
    return { layer, time: unlitMm > 0 ? partlyUnlit(time, move, { unlitMm, motion }) : time };
  });
};

/** What is fed through with the beam off is on the way, not cut; a run that is never lit starts no beam. */
const partlyUnlit = (
  time: JobTime,
  move: JobMove | undefined,
  { unlitMm, motion }: { readonly unlitMm: number; readonly motion: MotionValues },
): JobTime => {
  if (move?.kind !== 'cut') return time;
  const seconds = unlitMm / move.speedMmPerS;
  const isDark = unlitMm >= time.cutMm - 1e-6;
  const startS = isDark ? (motion.lineDelayS ?? 0) : 0;
  return {
    ...time,
    seconds: time.seconds - startS,
    delaysS: time.delaysS - startS,
    cuttingS: Math.max(0, time.cuttingS - seconds),
    travelS: time.travelS + seconds + (isDark ? time.cornersS : 0),
    cornersS: isDark ? 0 : time.cornersS,
    cutMm: Math.max(0, time.cutMm - unlitMm),
    travelMm: time.travelMm + unlitMm,
  };
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
