import type { Toolpath } from '../../core/filecheck/toolpath.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { refuseStopped, type ReadingOptions } from '../reading.ts';
import { readingLimits } from '../readingLimits.ts';
import { cutLines } from './cutLines.ts';
import type { GcodeProgram } from './gcodeProgram.ts';
import { gcodeTraps } from './gcodeTraps.ts';
import { interpretGcode } from './interpretGcode.ts';
import { isLit, seenFromAbove } from './moves.ts';
import { unlitOf } from './unlitOf.ts';

/**
 * A program as the lines that it cuts, each with the speed and power in force, whatever controller it was written for.
 * Comments of our own name sections and cells. Refuses: `gcode-unreadable` (with line and reason), too big a file, places
 * further away than any bed reaches. O(signs + points).
 */
export const readGcode = (text: string, options: ReadingOptions = {}): Outcome<Toolpath> => {
  const carriedOut = interpretGcode(text);
  if (!carriedOut.ok) {
    const { line, why } = carriedOut.error;
    return refused('gcode-unreadable', { line, why });
  }
  const { program } = carriedOut;
  const lines = cutLines(program, options);
  if (!lines.ok) return lines;
  const travels = program.moves.filter((move) => !isLit(move));
  const far = travels.find(({ end }) => !reaches(end[0]) || !reaches(end[1]));
  if (far !== undefined) return refuseStopped('too-far', far.line);
  const sAtFullPower = scaleOf(program);
  return done({
    kind: 'gcode',
    lines: lines.value,
    travels: travels.map(({ end }) => seenFromAbove(end)),
    unlit: unlitOf(program, lines.value),
    noticed: gcodeTraps(program, lines.value),
    ...(saysDisarmed(program) ? { disarmed: true } : {}),
    ...(sAtFullPower === undefined ? {} : { sAtFullPower }),
  });
};

const reaches = (mm: number): boolean => Math.abs(mm) <= readingLimits.farthestMm;

/** As a job to be timed says at its top. */
const saysDisarmed = ({ comments }: GcodeProgram): boolean =>
  comments.some(({ text }) => /^Throughcut job to be timed\b.*\bbeam disarmed$/.test(text));

const scaleOf = ({ comments }: GcodeProgram): number | undefined => {
  const found = comments.map(({ text }) => /^S(\d+(?:\.\d+)?) is 100 pct$/.exec(text)?.[1]);
  const scale = Number(found.find((value) => value !== undefined));
  return scale > 0 ? scale : undefined;
};
