import { z } from 'zod';
import type { Card } from '../core/card/card.ts';
import { cardDrawing } from '../core/card/cardDrawing.ts';
import { cellsInCuttingOrder } from '../core/card/cuttingOrder.ts';
import { notchPoints } from '../core/card/notches.ts';
import { cellWords } from '../core/card/settingWords.ts';
import { shapeOutline } from '../core/card/testShapes.ts';
import { settingKey, type Setting } from '../core/machine/setting.ts';
import { distanceMm, type Point } from '../core/path/point.ts';
import { done, refused, type Outcome } from '../core/problem.ts';
import { parseJsonText, parseWith } from './border.ts';
import { cardShape } from './saved/card.ts';
import { cornerRule, cornersWithin, settingShape } from './saved/setting.ts';

const point = z.tuple([z.number(), z.number()]).readonly();
const cornerPoints = z.strictObject({
  'lower-left': point,
  'lower-right': point,
  'upper-left': point,
  'upper-right': point,
});

const saved = cardShape.shape;

/** A card file: the card, and beside it what every other tool would otherwise have to work out. */
const cardFileShape = z.strictObject({
  ...saved,
  rungs: z
    .array(
      z
        .strictObject({
          letter: saved.rungs.element.shape.letter,
          ...settingShape.shape,
          layer: z.string(),
          colour: z.string(),
        })
        .refine(cornersWithin, cornerRule),
    )
    .min(1)
    .max(200),
  cells: z
    .array(
      z
        .strictObject({
          ...saved.cells.element.shape,
          ...settingShape.shape,
          words: z.string(),
        })
        .refine(cornersWithin, cornerRule),
    )
    .min(1)
    .max(1000),
  shapeOutlineMm: z.array(point).max(5000),
  cuttingOrder: z.array(z.string()).max(2000),
  notchesMm: cornerPoints,
});

type CardFile = z.infer<typeof cardFileShape>;

/**
 * The master of a card as a file, from which every drawing of it can be made again: `docs/formats/card.md`. What can be
 * worked out (each cell's setting and words, the outline of the shape, the order of cutting, the notches) is written
 * down too, and checked on reading.
 */
export const writeCardFile = (card: Card): string =>
  `${JSON.stringify(toCardFile(card), null, 2)}\n`;

const toCardFile = (card: Card): CardFile => {
  const layers = cardDrawing(card).layers;
  const settings = new Map(card.rungs.map(({ letter, setting }) => [letter, setting]));
  const { rungs, cells, ...rest } = card;
  return {
    ...rest,
    rungs: rungs.map(({ letter, setting }) => {
      const layer = layers.find(({ rung }) => rung === letter);
      return { letter, ...setting, layer: layer?.name ?? '', colour: layer?.colour ?? '' };
    }),
    cells: cells.map((cell) => {
      const setting = settings.get(cell.rung);
      if (setting === undefined) throw new Error(`Cell ${cell.id} stands on no rung.`);
      return { ...cell, ...setting, words: cellWords(setting) };
    }),
    shapeOutlineMm: shapeOutline(card.shape, card.sizeMm).map(rounded),
    cuttingOrder: [
      ...layers.filter(({ kind }) => kind === 'marks').map(({ kind }) => kind),
      ...cellsInCuttingOrder(card).map(({ id }) => id),
      ...layers.filter(({ kind }) => kind === 'window' || kind === 'outline').map((l) => l.kind),
    ],
    notchesMm: notchPoints(card),
  };
};

const rounded = ([x, y]: Point): Point => [Number(x.toFixed(4)), Number(y.toFixed(4))];

/**
 * Reads a card file. Refuses what is no card (the codes of `formats`); one whose cells say something else than their
 * rungs, naming the first such cell (`card-file-cell-differs`); and one whose drawing is not the card's
 * (`card-file-part-differs`).
 */
export const parseCardFile = (text: string): Outcome<Card> => {
  const json = parseJsonText(text);
  if (!json.ok) return json;
  const file = parseWith(cardFileShape, json.value);
  if (!file.ok) return file;
  const { shapeOutlineMm, cuttingOrder, notchesMm, rungs, cells, ...rest } = file.value;
  const card = parseWith(cardShape, {
    ...rest,
    rungs: rungs.map(({ letter, ...rung }) => ({ letter, setting: settingOf(rung) })),
    cells: cells.map(({ id, rung, xMm, yMm }) => ({ id, rung, xMm, yMm })),
  });
  if (!card.ok) return card;
  const expected = toCardFile(card.value);
  const cell = cells.find((said, i) => !sameCell(said, expected.cells[i]));
  if (cell !== undefined) {
    return refused('card-file-cell-differs', { cell: cell.id, card: card.value.code });
  }
  const part = [
    sameOutline(shapeOutlineMm, expected.shapeOutlineMm) ? undefined : 'shapeOutlineMm',
    cuttingOrder.join() === expected.cuttingOrder.join() ? undefined : 'cuttingOrder',
    sameOutline(Object.values(notchesMm), Object.values(expected.notchesMm))
      ? undefined
      : 'notchesMm',
  ].find((name) => name !== undefined);
  return part === undefined
    ? done(card.value)
    : refused('card-file-part-differs', { part, card: card.value.code });
};

type FileSetting = Pick<
  CardFile['cells'][number],
  'powerPct' | 'minPowerPct' | 'speedMmPerS' | 'passes' | 'air'
>;

const settingOf = ({ powerPct, minPowerPct, speedMmPerS, passes, air }: FileSetting): Setting => ({
  powerPct,
  ...(minPowerPct === undefined ? {} : { minPowerPct }),
  speedMmPerS,
  passes,
  ...(air === undefined ? {} : { air }),
});

const sameCell = (
  said: CardFile['cells'][number],
  expected: CardFile['cells'][number] | undefined,
) =>
  expected !== undefined &&
  settingKey(settingOf(said)) === settingKey(settingOf(expected)) &&
  said.words === expected.words;

/** To a hundredth of a mm: engines may differ in the last digit of a cosine. */
const sameOutline = (a: readonly Point[], b: readonly Point[]): boolean =>
  a.length === b.length &&
  a.every((from, i) => {
    const to = b[i];
    return to !== undefined && distanceMm(from, to) < 0.01;
  });
