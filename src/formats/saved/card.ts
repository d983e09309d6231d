import { z } from 'zod';
import type { Card } from '../../core/card/card.ts';
import { testShapeNames } from '../../core/card/testShapes.ts';
import { code, label, lengthMm, note, pct, thicknessMm } from './bounds.ts';
import { mostOnCard } from './limits.ts';
import { settingShape } from './setting.ts';

const positionMm = z.number().min(-100_000).max(100_000);

const placeShape = z.strictObject({
  xMm: positionMm,
  yMm: positionMm,
  widthMm: lengthMm,
  heightMm: lengthMm,
});

const rungLetter = z.string().regex(/^[A-Z]{1,2}$/, 'one or two capital letters');
const cellId = z.string().regex(/^[A-Z]{1,2}[0-9]{1,3}$/, 'a rung letter and a number');

const unique = (names: readonly string[]): boolean => new Set(names).size === names.length;

/** A card as saved and sent: each rung and cell named once, each cell on a rung of the card. */
export const cardShape = z
  .strictObject({
    version: z.literal(1),
    code,
    origin: z.enum(['designed', 'described']),
    rungs: z
      .array(z.strictObject({ letter: rungLetter, setting: settingShape }))
      .min(1)
      .max(mostOnCard.rungs),
    cells: z
      .array(z.strictObject({ id: cellId, rung: rungLetter, xMm: positionMm, yMm: positionMm }))
      .min(1)
      .max(mostOnCard.cells),
    shape: z.enum(testShapeNames),
    sizeMm: lengthMm,
    shapeLengthMm: lengthMm,
    widthMm: lengthMm,
    heightMm: lengthMm,
    scoring: settingShape.exactOptional(),
    trusted: settingShape.exactOptional(),
    outline: z.enum(['last', 'none']),
    doubledNotch: z.enum(['lower-left', 'lower-right', 'upper-left', 'upper-right']),
    places: z.strictObject({
      code: placeShape.exactOptional(),
      writeIn: placeShape.exactOptional(),
      window: placeShape.exactOptional(),
      whole: placeShape.exactOptional(),
    }),
    believed: z
      .strictObject({
        powerPct: pct,
        v50MmPerS: z.number().positive(),
        powerExponent: z.number().positive().max(10).exactOptional(),
      })
      .exactOptional(),
    overdrive: z.literal(true).exactOptional(),
    isExample: z.literal(true).exactOptional(),
    order: z.literal('free').exactOptional(),
    batch: label.exactOptional(),
    sheet: label.exactOptional(),
    thicknessMm: thicknessMm.exactOptional(),
    note: note.exactOptional(),
  })
  .refine((card) => unique(card.rungs.map((rung) => rung.letter)), {
    path: ['rungs'],
    message: 'each rung needs a letter of its own',
  })
  .refine((card) => unique(card.cells.map((cell) => cell.id)), {
    path: ['cells'],
    message: 'each cell needs a name of its own',
  })
  .refine((card) => card.cells.every((c) => card.rungs.some((r) => r.letter === c.rung)), {
    path: ['cells'],
    message: 'each cell must stand on a rung of the card',
  }) satisfies z.ZodType<Card>;
