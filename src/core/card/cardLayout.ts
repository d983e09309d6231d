import type { Point } from '../path/point.ts';
import type { Place } from './card.ts';
import { notchDoubleMm, notchInsetMm, notchLegMm, wordsGapMm } from './cardMeasures.ts';
import {
  codeLettering,
  depthMm,
  hintLettering,
  linePitchMm,
  riseMm,
  wordLettering,
} from './lettering.ts';
import { textWidthMm } from './letters.ts';

export interface LayoutTask {
  readonly cells: number;
  /** The box of one shape. */
  readonly shapeBox: { readonly widthMm: number; readonly heightMm: number };
  /** The widest line of words beside any cell. */
  readonly wordsWidthMm: number;
  readonly thicknessMm: number;
  readonly sheetMm: readonly [widthMm: number, heightMm: number];
  readonly window: boolean;
}

export interface CardLayout {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Middles of the cells' shapes. */
  readonly spots: readonly Point[];
  /** Spots nearer than this are neighbours. */
  readonly neighbourMm: number;
  readonly places: {
    readonly code: Place;
    readonly writeIn: Place;
    readonly window?: Place;
    readonly whole: Place;
  };
}

/** Between words and what comes below. */
const belowWordsMm = 1.8;

/** Height of the two lines of words below a shape, gap included. */
export const wordsBlockMm = (): number =>
  wordsGapMm + riseMm(wordLettering) + linePitchMm(wordLettering) + depthMm(wordLettering);

/**
 * The smallest card that fits the sheet: cells in rows that are shifted by half a step, like bricks, so that no cell has
 * another straight above it and heat does not add up in columns. Undefined where none fits.
 */
export const cardLayout = (task: LayoutTask): CardLayout | undefined => {
  const fitting = Array.from({ length: task.cells }, (_, i) => i + 1)
    .flatMap((columns) => [bricks(task, columns, columns), bricks(task, columns, columns - 1)])
    .map((rows) => cardAround(task, rows))
    .filter((card) => card.widthMm <= task.sheetMm[0] && card.heightMm <= task.sheetMm[1]);
  return fitting.reduce<CardLayout | undefined>(
    (best, card) => (best === undefined || clumsiness(card) < clumsiness(best) ? card : best),
    undefined,
  );
};

/** Area, with some regard for a shape that a hand likes to hold: a little wider than high. */
const clumsiness = ({ widthMm, heightMm }: CardLayout): number =>
  widthMm * heightMm * (1 + 0.3 * Math.abs(Math.log(widthMm / heightMm / 1.35)));

/** Cells of each row, as steps from the left: whole in even rows, half in odd ones. */
type Rows = readonly (readonly number[])[];

const bricks = (task: LayoutTask, even: number, odd: number): Rows => {
  const rows: number[][] = [];
  let left = task.cells;
  while (left > 0) {
    const isOdd = rows.length % 2 === 1;
    const room = isOdd ? Math.max(odd, 1) : even;
    const taken = Math.min(room, left);
    const start = Math.floor((room - taken) / 2) + (isOdd ? 0.5 : 0);
    rows.push(Array.from({ length: taken }, (_, i) => start + i));
    left -= taken;
  }
  return rows;
};

const cardAround = (task: LayoutTask, rows: Rows): CardLayout => {
  const { shapeBox, thicknessMm } = task;
  const stepX = Math.max(
    shapeBox.widthMm + Math.max(thicknessMm, 2),
    task.wordsWidthMm + belowWordsMm,
  );
  const stepY = shapeBox.heightMm + Math.max(thicknessMm, wordsBlockMm() + belowWordsMm);
  const margin = Math.max(notchInsetMm + notchDoubleMm + 2, thicknessMm);
  const roomWidth = Math.max(shapeBox.widthMm, task.wordsWidthMm);
  const steps = rows.flat();
  const first = Math.min(...steps);
  const cellsWidth = (Math.max(...steps) - first) * stepX + roomWidth;

  const head = headOf(task, cellsWidth);
  const innerWidth = Math.max(cellsWidth, head.widthMm);
  const widthMm = Math.ceil(innerWidth + 2 * margin);
  const cellsHeight = (rows.length - 1) * stepY + shapeBox.heightMm + wordsBlockMm();
  const heightMm = Math.ceil(cellsHeight + head.heightMm + 2 * margin);

  const leftX = (widthMm - cellsWidth) / 2 + roomWidth / 2;
  const topY = heightMm - margin - head.heightMm - shapeBox.heightMm / 2;
  return {
    widthMm,
    heightMm,
    spots: rows.flatMap((row, r) =>
      row.map((step): Point => [leftX + (step - first) * stepX, topY - r * stepY]),
    ),
    neighbourMm: 1.05 * Math.hypot(stepX / 2, stepY) + (stepX > stepY ? stepX - stepY : 0),
    places: head.placed([margin, heightMm - margin], widthMm - 2 * margin),
  };
};

interface Head {
  readonly widthMm: number;
  readonly heightMm: number;
  /** The places, given the head's upper left corner and the width there is. */
  readonly placed: (upperLeft: Point, widthMm: number) => CardLayout['places'];
}

const headGapMm = 3;
const leastWriteInMm = 36;
const writeInHeightMm = 9;

/** Code on the left, window and patch on the right, the write-in field between them or, on a slim card, below. */
const headOf = (task: LayoutTask, cellsWidth: number): Head => {
  const notchRoom = notchLegMm - 2;
  const codeWidth = textWidthMm('WWWW', codeLettering) + notchRoom;
  const patch = Math.min(12, Math.max(7, 0.7 * task.shapeBox.heightMm));
  const hint = hintLettering.capMm + 1;
  const patches = task.window ? 2 * patch + headGapMm : patch;
  const rowHeight = Math.max(codeLettering.capMm, patch + hint);
  const oneRow = codeWidth + patches + notchRoom + leastWriteInMm + 2 * headGapMm;
  const twoRows = codeWidth + patches + notchRoom + headGapMm;
  const between = oneRow <= cellsWidth;
  const height = (between ? rowHeight : rowHeight + headGapMm + writeInHeightMm) + headGapMm;
  return {
    widthMm: between ? oneRow : Math.max(twoRows, leastWriteInMm),
    heightMm: height,
    placed: ([left, top], width) => {
      const right = left + width - notchRoom;
      const patchY = top - hint - patch;
      const patchAt = (fromRight: number): Place => ({
        xMm: right - (fromRight + 1) * patch - fromRight * headGapMm,
        yMm: patchY,
        widthMm: patch,
        heightMm: patch,
      });
      const codeLeft = left + notchRoom;
      const writeIn = between
        ? {
            xMm: left + codeWidth + headGapMm,
            yMm: patchY,
            widthMm: right - patches - headGapMm - (left + codeWidth + headGapMm),
            heightMm: writeInHeightMm,
          }
        : {
            xMm: left,
            yMm: top - rowHeight - headGapMm - writeInHeightMm,
            widthMm: width,
            heightMm: writeInHeightMm,
          };
      return {
        code: {
          xMm: codeLeft,
          yMm: patchY + (patch - codeLettering.capMm) / 2,
          widthMm: codeWidth - notchRoom,
          heightMm: codeLettering.capMm,
        },
        writeIn,
        whole: patchAt(0),
        ...(task.window ? { window: patchAt(1) } : {}),
      };
    },
  };
};
