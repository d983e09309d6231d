import type { Toolpath } from '../core/filecheck/toolpath.ts';
import { refused, type Outcome } from '../core/problem.ts';
import { refuseBySize } from './drawingSize.ts';
import { readDxf } from './dxf/readDxf.ts';
import { readGcode } from './gcode/readGcode.ts';
import type { ReadingOptions } from './reading.ts';
import { readSvg } from './svg/readSvg.ts';

/**
 * Reads a file for the machine by what is in it, whatever its name. Refuses: `drawing-too-big`, `drawing-kind-unknown`,
 * and what the readers refuse. Whoever has a file rather than its text asks `refuseBySize` first.
 */
export const readToolpath = (text: string, options: ReadingOptions = {}): Outcome<Toolpath> => {
  const tooBig = refuseBySize(text.length);
  if (tooBig !== undefined) return tooBig;
  const bare = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const head = bare.slice(0, 4000).trimStart();
  if (head.startsWith('<')) return readSvg(bare.trimStart(), options);
  if (/^(999\s[^\n]*\n\s*)*0\s*\r?\n\s*SECTION/.test(head)) return readDxf(bare, options);
  if (looksLikeGcode(head)) return readGcode(bare, options);
  return refused('drawing-kind-unknown');
};

/** One of the first lines is a word of a program, a comment or a percent sign, and none is a sign of something else. */
const looksLikeGcode = (head: string): boolean => {
  if (head.includes('\0')) return false;
  const lines = head
    .split(/\r?\n/)
    .slice(0, 60)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  return (
    lines.some((line) => /^(N\d+\s*)?[GM]\s*\d/i.test(line)) &&
    lines.every((line) => /^[ -~\t]*$/.test(line) || /[;(]/.test(line))
  );
};
