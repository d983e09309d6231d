import { z } from 'zod';
import { combPlaceCounts, usualStrips } from '../core/kerf/combSheet.ts';
import { combDirections } from '../core/kerf/kerfComb.ts';
import type { KerfCardRequest } from '../core/kerf/kerfCard.ts';
import { usualStepMm } from '../core/kerf/slotSheet.ts';
import { plainDialect, type GcodeDialect } from '../core/dialect/gcodeDialect.ts';
import type { Outcome } from '../core/problem.ts';
import type { NamedMaterial } from '../core/stock/namedMaterial.ts';
import { parseWith } from './border.ts';
import { cutInFile } from './cutInFile.ts';
import { label, lengthMm, thicknessMm } from './saved/bounds.ts';
import { knownBy, materialKnownInFile } from './saved/materialKnown.ts';
import { dialectInFile, studyFileShape } from './studyFile.ts';

/** What is asked of a comb or slot card in a file: `docs/formats/kerf-card-request.md`. */
export interface KerfCardRequestFile {
  readonly asked: Omit<KerfCardRequest, 'believed'> & { readonly named: NamedMaterial };
  readonly gcode: GcodeDialect;
}

/** How a comb or slot card may be asked for: in a file, and in the address of one. */
export const kerfWishBounds = {
  places: z.union(combPlaceCounts.map((count) => z.literal(count))),
  strips: z.int().min(2).max(40),
  slots: z.int().min(3).max(40),
  stepMm: z.number().min(0.01).max(1),
  /** Wider than any beam that cuts sheet. */
  kerfMm: z.number().positive().max(5),
} as const;

const comb = z.strictObject({
  kind: z.literal('comb'),
  pieceMm: z.tuple([lengthMm, lengthMm]),
  places: kerfWishBounds.places.default(4),
  directions: z
    .array(z.enum(combDirections))
    .min(1)
    .max(2)
    .default([...combDirections]),
  strips: kerfWishBounds.strips.default(usualStrips),
});

const slots = z.strictObject({
  kind: z.literal('slots'),
  kerfMm: kerfWishBounds.kerfMm.exactOptional(),
  direction: z.enum(combDirections).exactOptional(),
  slots: kerfWishBounds.slots.exactOptional(),
  stepMm: kerfWishBounds.stepMm.default(usualStepMm),
});

const shape = z
  .strictObject({
    version: z.literal(1),
    material: label,
    materialKnown: materialKnownInFile,
    thicknessMm,
    card: z.discriminatedUnion('kind', [comb, slots]),
    setting: cutInFile,
    scoring: cutInFile.exactOptional(),
    machine: studyFileShape.shape.machine,
    gcode: dialectInFile.exactOptional(),
  })
  .transform((file): KerfCardRequestFile => {
    const { material, materialKnown, card, machine, scoring } = file;
    return {
      asked: {
        named: knownBy(materialKnown)({ material }),
        wish: card.kind === 'comb' ? { ...card, directions: [...new Set(card.directions)] } : card,
        setting: file.setting,
        ...(scoring === undefined ? {} : { scoring }),
        thicknessMm: file.thicknessMm,
        machine,
      },
      gcode: file.gcode ?? machine.gcode ?? plainDialect,
    };
  });

/** Reads a request for a comb or slot card, strict about keys, types and ranges. */
export const parseKerfCardRequest = (json: unknown): Outcome<KerfCardRequestFile> =>
  parseWith(shape, json);
