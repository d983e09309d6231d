import { z } from 'zod';
import { testShapeNames } from '../core/card/testShapes.ts';
import { code, id, label, lengthMm, note, pct, speedMmPerS } from '../formats/saved/bounds.ts';
import { cardShape } from '../formats/saved/card.ts';
import { settingShape } from '../formats/saved/setting.ts';
import { saidProblem } from './problem.ts';

export const byCard = z.strictObject({ id, code });

/** A card asked for: what is not known, and the wishes. The study says the rest. */
export const cardRequestShape = z.strictObject({
  vary: z.enum(['speed', 'power', 'speed-and-power', 'passes', 'corners']).exactOptional(),
  powerPct: pct.exactOptional(),
  speedMmPerS: speedMmPerS.exactOptional(),
  /** Settings said outright, instead of `vary`. */
  rungs: z.array(settingShape).min(1).max(200).exactOptional(),
  settingsAtMost: z.number().int().min(1).max(60).exactOptional(),
  /** From the colour trial: how many separate entries the control program keeps apart. */
  entriesAtMost: z.number().int().min(1).max(1000).exactOptional(),
  cellsEach: z.number().int().min(1).max(24).exactOptional(),
  shape: z.enum(testShapeNames).exactOptional(),
  sizeMm: lengthMm.exactOptional(),
  sheetMm: z.tuple([lengthMm, lengthMm]).exactOptional(),
  /** A person's deliberate choice: rungs may drive the tube above its rated current. */
  overdrive: z.boolean().exactOptional(),
  scoring: settingShape.exactOptional(),
  trusted: settingShape.exactOptional(),
  outline: z.enum(['last', 'none']).exactOptional(),
  seed: z.number().int().min(0).max(4_294_967_295).exactOptional(),
  batch: label.exactOptional(),
  /** The board's name. Neither this nor `sameSheetAs`, and none named with the stock: a board of the card's own. */
  sheet: label.exactOptional(),
  /** Code of an earlier card of the study: this one is cut from the same board, of the same batch. */
  sameSheetAs: code.exactOptional(),
});

/** Either a whole card, made by the page, or a request for one. The same card sent twice is stored once. */
export const addCardBody = z.union([
  z.strictObject({ card: cardShape }),
  z.strictObject({ request: cardRequestShape }),
]);

export const replaceCardBody = z.strictObject({ card: cardShape });

export const noteCardBody = z.strictObject({
  /** Null: it is taken away. */
  note: note.nullable(),
});

export const cardReply = z.strictObject({
  card: cardShape,
  revision: z.number().int(),
  /** What is to be said of a card that was designed here: what was changed in the request, what it lacks. */
  remarks: z.array(saidProblem).exactOptional(),
});
