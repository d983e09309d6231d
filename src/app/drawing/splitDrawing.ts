import { fileSetting } from '../../core/filecheck/fileSetting.ts';
import type { PathLine, Toolpath } from '../../core/filecheck/toolpath.ts';
import type { GcodeDialect } from '../../core/dialect/gcodeDialect.ts';
import type { Setting } from '../../core/machine/setting.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { linesInParts } from '../../core/proof/linesInParts.ts';
import { sheetDrawing, type SheetDrawn } from '../../core/running/sheetDrawing.ts';
import { readToolpath } from '../../formats/readToolpath.ts';

/** A drawing of one sheet, and the settings that its parts are to be cut with. */
export interface DrawingToSplit {
  /** The file: SVG, DXF or G-code. */
  readonly text: string;
  /** The main one first; of each other so many parts. */
  readonly settings: readonly { readonly setting: Setting; readonly parts: number }[];
  /** What S means in a program that does not say it. */
  readonly dialect: Pick<GcodeDialect, 'sAtFullPower'>;
}

export interface SplitDrawing extends SheetDrawn {
  readonly kind: Toolpath['kind'];
  /** Pieces that the drawing gives. */
  readonly parts: number;
  /** Lines that free nothing: they stay as they are. */
  readonly rest: number;
}

/**
 * The user's own drawing with its parts on a layer for each setting. Refuses what the readers refuse; `proof-nothing-to-cut`.
 */
export const splitDrawing = ({
  text,
  settings,
  dialect,
}: DrawingToSplit): Outcome<SplitDrawing> => {
  const read = readToolpath(text);
  if (!read.ok) return read;
  const { kind, page, sAtFullPower = dialect.sAtFullPower } = read.value;
  const found = linesInParts(read.value.lines);
  if (!found.ok) return found;
  const { lines, inParts } = found.value;
  const settingOf = (line: PathLine): Setting | undefined => {
    const told = fileSetting({ ...read.value, sAtFullPower }, line);
    return told?.powerPct === undefined
      ? line.spelt?.setting
      : { powerPct: told.powerPct, speedMmPerS: told.speedMmPerS, passes: line.passes };
  };
  return done({
    kind,
    parts: inParts.parts.length,
    rest: inParts.open.length,
    ...sheetDrawing({
      lines,
      inParts,
      settings,
      settingOf,
      ...(page === undefined ? {} : { page }),
    }),
  });
};
