import { parseLayerName } from '../../core/card/settingWords.ts';
import type { PathLine, Toolpath, Unlit } from '../../core/filecheck/toolpath.ts';
import { arcPoints } from '../../core/path/arc.ts';
import type { Point } from '../../core/path/point.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { readingLimits } from '../readingLimits.ts';
import type { GcodeMove, GcodeProgram } from './gcodeProgram.ts';
import { gcodeTraps } from './gcodeTraps.ts';
import { interpretGcode } from './interpretGcode.ts';
import { unfold } from './unfold.ts';
import { refuseDrawing } from '../refuseDrawing.ts';

/**
 * A program as the lines that it cuts, each with the speed and power in force, whatever controller it was written for.
 * Comments of our own name sections and cells. Refuses: `gcode-unreadable` (with line and reason), too big a file.
 */
export const readGcode = (text: string): Outcome<Toolpath> => {
  const run = interpretGcode(text);
  if (!run.ok) {
    return refuseDrawing('gcode-unreadable', { line: run.error.line, why: run.error.why });
  }
  const { program } = run;
  const lines = cutLines(program);
  const points = lines.reduce((sum, line) => sum + line.points.length, 0);
  if (points > readingLimits.points) return refuseDrawing('drawing-too-many-points', { points });
  const sAtFullPower = scaleOf(program);
  return done({
    kind: 'gcode',
    lines,
    travels: program.moves.filter((move) => !isLit(move)).map(({ end }): Point => [end[0], end[1]]),
    unlit: unlitOf(program, lines),
    noticed: gcodeTraps(program, lines),
    ...(sAtFullPower === undefined ? {} : { sAtFullPower }),
  });
};

/** A beam that is told to be on while the head feeds. In a rapid move it is a trap, not a cut. */
export const isLit = ({ type, spindle, s }: GcodeMove): boolean =>
  type !== 'rapid' && spindle !== 5 && s > 0;

/** Travels and pauses, each before the line that begins after it. O(moves + lines). */
const unlitOf = (program: GcodeProgram, lines: readonly PathLine[]): readonly Unlit[] => {
  const steps = [
    ...program.moves
      .filter((move) => !isLit(move))
      .map((move) => ({ line: move.line, ...travelOf(move) })),
    ...program.dwells.map(({ line, seconds }) => ({ line, kind: 'wait' as const, seconds })),
  ].sort((a, b) => a.line - b.line);
  let beforeLine = 0;
  return steps.map(({ line, ...step }) => {
    while ((lines[beforeLine]?.where ?? Infinity) < line) beforeLine += 1;
    return { beforeLine, ...step };
  });
};

const travelOf = (move: GcodeMove) => ({
  kind: 'travel' as const,
  to: pointOf(move.end),
  ...(move.type === 'rapid' ? {} : { speedMmPerS: speedOf(move) }),
});

/** In mm/s; under inverse time from length and minutes. */
const speedOf = ({ feedMmPerMin, lengthMm, minutes }: GcodeMove): number =>
  (feedMmPerMin ?? lengthMm / Math.max(minutes, 1e-9)) / 60;

const scaleOf = ({ comments }: GcodeProgram): number | undefined => {
  const found = comments.map(({ text }) => /^S(\d+(?:\.\d+)?) is 100 pct$/.exec(text)?.[1]);
  const scale = Number(found.find((value) => value !== undefined));
  return scale > 0 ? scale : undefined;
};

/** Moves that follow each other with one setting are one line; a setting that changes on the way begins another. */
const cutLines = (program: GcodeProgram): readonly PathLine[] => {
  const names = namesOf(program);
  const runs: GcodeMove[][] = [];
  let before: GcodeMove | undefined;
  for (const move of program.moves) {
    if (isLit(move)) {
      const goesOn = before !== undefined && isLit(before) && sameTold(before, move);
      const last = runs.at(-1);
      if (goesOn && last !== undefined && !names.begins(before, move)) last.push(move);
      else runs.push([move]);
    }
    before = move;
  }
  return runs.flatMap((moves) => lineOf(moves, names));
};

const sameTold = (a: GcodeMove, b: GcodeMove): boolean =>
  a.feedMmPerMin === b.feedMmPerMin && a.s === b.s && a.air === b.air;

const lineOf = (moves: readonly GcodeMove[], names: Names): readonly PathLine[] => {
  const [first] = moves;
  if (first === undefined) return [];
  const traced = [pointOf(first.start), ...moves.flatMap(pointsOf)];
  const { points, passes } = unfold(traced);
  return [
    {
      points,
      passes,
      ...names.at(first.line),
      told: { speedMmPerS: speedOf(first), s: first.s, air: first.air },
      where: first.line,
    },
  ];
};

const pointOf = ([x, y]: GcodeMove['end']): Point => [x, y];

/** Seen from above: an arc in an upright plane is drawn as its chord. */
const pointsOf = (move: GcodeMove): readonly Point[] => {
  const { arc, start, end } = move;
  if (arc?.plane !== 'G17') return [pointOf(end)];
  const [cx, cy] = arc.centre;
  const points = arcPoints(
    {
      centre: [cx, cy],
      radiusMm: arc.radiusMm,
      fromRad: Math.atan2(start[1] - cy, start[0] - cx),
      turnRad: move.type === 'arcCw' ? -arc.sweepRad : arc.sweepRad,
    },
    0.01,
  );
  return [...points.slice(1, -1), pointOf(end)];
};

interface Names {
  readonly at: (line: number) => Pick<PathLine, 'layer' | 'spelt' | 'cell'>;
  /** Whether a name begins between two moves. */
  readonly begins: (before: GcodeMove | undefined, move: GcodeMove) => boolean;
}

/** Comments in the form of our own: `(A 14.0mmps 30pct min30)` begins a section, `(A1 14 mm/s 30%)` a cell. */
const namesOf = ({ comments }: GcodeProgram): Names => {
  const found = comments.flatMap(({ line, text }): readonly Name[] => {
    const spelt = parseLayerName(text);
    if (spelt !== undefined) return [{ line, section: { layer: text, spelt } }];
    const cell = /^([A-Z]{1,2}\d{1,3}) (\d.*)$/.exec(text);
    return cell === null ? [] : [{ line, cell: { id: cell[1] ?? '', words: cell[2] ?? '' } }];
  });
  return {
    at: (line) => {
      const before = found.filter((name) => name.line <= line);
      const section = before.findLast((name) => name.section !== undefined);
      const cell = before.findLast((name) => name.cell !== undefined);
      const inSection = cell !== undefined && cell.line > (section?.line ?? 0);
      return {
        ...section?.section,
        ...(inSection && cell.cell !== undefined ? { cell: cell.cell } : {}),
      };
    },
    begins: (before, move) =>
      found.some(({ line }) => line > (before?.line ?? 0) && line <= move.line),
  };
};

interface Name {
  readonly line: number;
  readonly section?: { readonly layer: string; readonly spelt: NonNullable<PathLine['spelt']> };
  readonly cell?: { readonly id: string; readonly words: string };
}
