import type { Toolpath } from '../core/filecheck/toolpath.ts';
import type { Outcome } from '../core/problem.ts';
import { readDxf } from './dxf/readDxf.ts';
import { readGcode } from './gcode/readGcode.ts';
import { readingLimits } from './readingLimits.ts';
import { readSvg } from './svg/readSvg.ts';
import { refuseDrawing } from './refuseDrawing.ts';

/**
 * Reads a file for the machine by what is in it, whatever its name. Refuses: `drawing-too-big`, `drawing-kind-unknown`,
 * and what the readers refuse.
 */
export const readToolpath = (text: string): Outcome<Toolpath> => {
  if (text.length > readingLimits.signs) {
    return refuseDrawing('drawing-too-big', {
      megabytes: Math.round(text.length / 1e6),
      most: readingLimits.signs / 1e6,
    });
  }
  const head = text
    .slice(0, 4000)
    .replace(/^\uFEFF/, '')
    .trimStart();
  if (head.startsWith('<')) return readSvg(text.replace(/^\uFEFF/, ''));
  if (/^(999\s[^\n]*\n\s*)*0\s*\r?\n\s*SECTION/.test(head)) return readDxf(text);
  if (looksLikeGcode(head)) return readGcode(text);
  return refuseDrawing('drawing-kind-unknown');
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
