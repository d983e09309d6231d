import { problemOf, type ProblemOf, type Carried } from '../problem.ts';
import type { GcodeDialect } from '../dialect/gcodeDialect.ts';
import type { Setting } from '../machine/setting.ts';
import type { Point } from '../path/point.ts';
import type { Polyline } from '../path/polyline.ts';
import type { FilecheckCode } from '../problems/filecheck.ts';

/** What a program tells the machine to do along a line. */
export interface ModalState {
  readonly speedMmPerS: number;
  /** The bare S word. */
  readonly s: number;
  readonly air: boolean;
  /** `constant` (M3): the same power at every speed; `speed-following` (M4): less as the head slows. */
  readonly beam: GcodeDialect['power'];
}

/** One line that is cut in one go, whatever file it came from. */
export interface PathLine {
  /** In mm, y upwards. */
  readonly points: Polyline;
  /** How often it is gone over. */
  readonly passes: number;
  /** As the file names the layer or section. */
  readonly layer?: string;
  /** Label and setting that this name spells. */
  readonly spelt?: { readonly label: string; readonly setting: Setting };
  /** The cell that the file says this is, and the words that it gives it. */
  readonly cell?: { readonly id: string; readonly words?: string };
  readonly colour?: string;
  /** Filled, without a stroke: it shows as a patch, not as a line. */
  readonly isStrokeless?: true;
  readonly modal?: ModalState;
  /** Line of a program; place in the order of a drawing. From 1. */
  readonly where: number;
}

/** What a program does with the beam off. */
export type Unlit = {
  /** Index of the line that comes after it; the number of lines where none does. */
  readonly beforeLine: number;
} & (
  | {
      readonly kind: 'travel';
      readonly to: Point;
      /** Absent for rapid moves. */
      readonly speedMmPerS?: number;
      /** The mode in force, in which S is 0; `off` (M5) stops the head where the beam goes on again. */
      readonly beam?: ModalState['beam'] | 'off';
    }
  | { readonly kind: 'wait'; readonly seconds: number }
);

/** Kinds of file that are read, each by a reader of its own. */
export const toolpathKinds = ['svg', 'dxf', 'gcode'] as const;

export type ToolpathKind = (typeof toolpathKinds)[number];

/** A file as what it makes the machine do, in order. */
export interface Toolpath {
  readonly kind: ToolpathKind;
  readonly lines: readonly PathLine[];
  /** The page that a drawing says it has. */
  readonly page?: { readonly widthMm: number; readonly heightMm: number };
  /** The S word that means 100 %, where the file says so. */
  readonly sAtFullPower?: number;
  /** The program itself says that it is run without a beam, to be timed. */
  readonly disarmed?: true;
  /** Ends of travels with the beam off, so that bounds hold for them too. */
  readonly travels: Polyline;
  /** The same in order, with pauses, where a program says them; a travel without a speed is a rapid move. */
  readonly unlit?: readonly Unlit[];
  /** What the reader itself noticed: traps of mode, parts that it could not read. */
  readonly noticed: readonly Finding[];
}

/** Something that the check of a file found. Faults make it fail; remarks are worth knowing. */
export type Finding = ProblemOf<FilecheckCode> & {
  readonly severity: 'fault' | 'remark';
  /** The cell that it is about, where it is about one. */
  readonly cell?: string;
};

export const fault = <Code extends FilecheckCode>(code: Code, ...carried: Carried<Code>): Finding =>
  finding('fault', problemOf(code, ...carried));

export const remark = <Code extends FilecheckCode>(
  code: Code,
  ...carried: Carried<Code>
): Finding => finding('remark', problemOf(code, ...carried));

const finding = (severity: Finding['severity'], problem: ProblemOf<FilecheckCode>): Finding => {
  const cell = 'cell' in problem.params ? problem.params.cell : undefined;
  return { severity, ...problem, ...(cell === undefined ? {} : { cell }) };
};
