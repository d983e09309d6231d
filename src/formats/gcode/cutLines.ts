import type { PathLine } from '../../core/filecheck/toolpath.ts';
import { circleArc } from '../../core/path/ellipseArc.ts';
import { Tracer } from '../../core/path/tracer.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { refuseStopped, tracerLimits, type ReadingOptions } from '../reading.ts';
import { GcodeNames } from './gcodeNames.ts';
import type { GcodeMove, GcodeProgram } from './gcodeProgram.ts';
import { isLit, seenFromAbove, speedOf } from './moves.ts';
import { unfold } from './unfold.ts';

/** Moves that follow each other with one setting are one line; a setting that changes on the way begins another. */
export const cutLines = (
  program: GcodeProgram,
  options: ReadingOptions,
): Outcome<readonly PathLine[]> => {
  const names = new GcodeNames(program);
  const tracer = new Tracer(tracerLimits(options));
  const lines: PathLine[] = [];
  let run: GcodeMove[] = [];
  let before: GcodeMove | undefined;
  const finishRun = (): void => {
    lines.push(...lineOf(run, names, tracer));
    run = [];
  };
  for (const move of program.moves) {
    const goesOn =
      before !== undefined &&
      isLit(move) &&
      isLit(before) &&
      sameTold(before, move) &&
      !names.beginsBetween(before.line, move.line);
    if (!goesOn) finishRun();
    if (tracer.stopped !== undefined) return refuseStopped(tracer.stopped, before?.line ?? 0);
    if (isLit(move)) run.push(move);
    before = move;
  }
  finishRun();
  return tracer.stopped === undefined
    ? done(lines)
    : refuseStopped(tracer.stopped, before?.line ?? 0);
};

const sameTold = (a: GcodeMove, b: GcodeMove): boolean =>
  a.feedMmPerMin === b.feedMmPerMin && a.s === b.s && a.air === b.air && a.spindle === b.spindle;

const lineOf = (
  moves: readonly GcodeMove[],
  names: GcodeNames,
  tracer: Tracer,
): readonly PathLine[] => {
  const [first] = moves;
  if (first === undefined) return [];
  tracer.moveTo(seenFromAbove(first.start));
  for (const move of moves) trace(move, tracer);
  return tracer.taken().map((traced) => ({
    ...unfold(traced),
    ...names.at(first.line),
    modal: {
      speedMmPerS: speedOf(first),
      s: first.s,
      air: first.air,
      beam: first.spindle === 4 ? 'speed-following' : 'constant',
    },
    where: first.line,
  }));
};

/** Seen from above: an arc in an upright plane is drawn as its chord. */
const trace = ({ arc, start, end, type }: GcodeMove, tracer: Tracer): void => {
  if (arc?.plane !== 'G17') {
    tracer.lineTo(seenFromAbove(end));
    return;
  }
  const [cx, cy] = arc.centre;
  const from = Math.atan2(start[1] - cy, start[0] - cx);
  const turn = type === 'arcCw' ? -arc.sweepRad : arc.sweepRad;
  tracer.arcTo(circleArc([cx, cy], arc.radiusMm, from, turn), seenFromAbove(end));
};
