import type { CutStudy, StudyCell } from '../cutmodel/cutStudy.ts';
import type { Grade } from '../reading/grade.ts';
import type { SpeedExplained } from './explanation.ts';

/** One graded cell in the picture. */
export interface WhyMark {
  /** Across, 0 (slow) to 1 (fast). */
  readonly x: number;
  /** Down, in steps of one cell. */
  readonly y: number;
  readonly grade: Grade;
  readonly speedMmPerS: number;
  readonly powerPct: number;
  /** How much the answer rests on it, 0 to 1 for the one that counts most; by its square root, as areas are seen. */
  readonly size: number;
  /** Without it the answer would be: `lower` slower, `higher` faster; `gone` none. */
  readonly without: 'lower' | 'higher' | 'gone';
}

/** The cells by speed across, one band for each power, cells of one setting under one another. */
export interface WhyPicture {
  readonly marks: readonly WhyMark[];
  /** Power settings from the top, each with where its band begins and how high it is, in steps. */
  readonly bands: readonly {
    readonly powerPct: number;
    readonly y: number;
    readonly steps: number;
  }[];
  readonly steps: number;
  readonly ticks: readonly { readonly x: number; readonly speedMmPerS: number }[];
  readonly answerX: number;
}

/** Room left and right of the outermost speeds, as a share of their span. */
const edge = 0.06;
/** Steps between two bands. */
const between = 0.9;

/** Where each cell stands and how large its ring is. O(cells²). */
export const whyPicture = (study: CutStudy, speed: SpeedExplained): WhyPicture => {
  const graded = study.cells.flatMap((cell, i) => {
    const left = speed.cells[i];
    return cell.grade === undefined ||
      cell.spoilt !== undefined ||
      left === null ||
      left === undefined
      ? []
      : [{ cell, grade: cell.grade, left }];
  });
  const speeds = [...graded.map(({ cell }) => cell.speedMmPerS), speed.speedMmPerS];
  const [least, most] = [Math.min(...speeds), Math.max(...speeds)];
  // By the logarithm, as the model has it: cells about the changeover get room.
  const span = Math.max(Math.log(most / least), 0.1);
  const across = (speedMmPerS: number): number =>
    (Math.log(speedMmPerS / least) + edge * span) / (span * (1 + 2 * edge));
  const powers = [...new Set(graded.map(({ cell }) => cell.powerPct))].sort((a, b) => b - a);
  let top = 0;
  const bands = powers.map((powerPct) => {
    const there = graded.map(({ cell }) => cell).filter((cell) => cell.powerPct === powerPct);
    const steps = Math.max(...there.map((cell) => there.filter((one) => isAt(one, cell)).length));
    const band = { powerPct, y: top, steps };
    top += steps + between;
    return band;
  });
  const largest = Math.max(
    1e-9,
    ...graded.map(({ left }) => (left.shiftPct === null ? 0 : Math.abs(left.shiftPct))),
  );
  const marks = graded.map(({ cell, grade, left }, i): WhyMark => {
    const band = bands.find(({ powerPct }) => powerPct === cell.powerPct);
    const alike = graded.filter((one) => isAt(one.cell, cell)).length;
    const before = graded.slice(0, i).filter((one) => isAt(one.cell, cell)).length;
    return {
      x: across(cell.speedMmPerS),
      y: (band?.y ?? 0) + ((band?.steps ?? 1) - alike) / 2 + before + 0.5,
      grade,
      speedMmPerS: cell.speedMmPerS,
      powerPct: cell.powerPct,
      size: left.shiftPct === null ? 1 : Math.sqrt(Math.abs(left.shiftPct) / largest),
      without: left.shiftPct === null ? 'gone' : left.shiftPct < 0 ? 'lower' : 'higher',
    };
  });
  return {
    marks,
    bands,
    steps: Math.max(1, top - between),
    ticks: ticksOver(speeds.slice(0, -1)).map((speedMmPerS) => ({
      x: across(speedMmPerS),
      speedMmPerS,
    })),
    answerX: across(speed.speedMmPerS),
  };
};

const isAt = (one: StudyCell, other: StudyCell): boolean =>
  one.powerPct === other.powerPct && one.speedMmPerS === other.speedMmPerS;

/** Most speeds that are written under the picture. */
const mostTicks = 7;

/** The speeds that were cut; every other one where they are many. */
const ticksOver = (speeds: readonly number[]): readonly number[] => {
  const distinct = [...new Set(speeds)].sort((a, b) => a - b);
  const every = Math.ceil(distinct.length / mostTicks);
  return distinct.filter((_, i) => i % every === 0);
};
