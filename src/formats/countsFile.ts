import { z } from 'zod';
import type { ScoredSheet } from '../core/score/sheetsToScore.ts';
import { findMaterial } from '../core/stock/materials.ts';
import type { Outcome } from '../core/problem.ts';
import { parseWith } from './border.ts';
import { count, label, thicknessMm } from './saved/bounds.ts';

const outOf100 = z.number().min(0).max(100);

/**
 * Counts with what was promised of them, and nothing else: no names, no notes, no dates (docs/formats/counts.md). Machines are
 * numbered.
 */
export interface CountsFile {
  readonly kind: 'throughcut-counts';
  readonly version: 1;
  readonly sheets: readonly ScoredSheet[];
}

const countsFileShape = z.strictObject({
  kind: z.literal('throughcut-counts'),
  version: z.literal(1),
  sheets: z.array(
    z
      .strictObject({
        material: label,
        thicknessMm,
        machine: label,
        promisedOutOf100: outOf100,
        foretoldOutOf100: outOf100,
        parts: count.min(1),
        out: count,
      })
      .refine(({ parts, out }) => out <= parts, {
        path: ['out'],
        message: 'no more parts come out than were cut',
      }),
  ),
}) satisfies z.ZodType<CountsFile>;

export const parseCountsFile = (json: unknown): Outcome<CountsFile> =>
  parseWith(countsFileShape, json);

/** Counts to give away: materials by their class, machines by number, and no more digits than a count needs. */
export const countsFile = (sheets: readonly ScoredSheet[]): CountsFile => {
  const machines = [...new Set(sheets.map(({ machine }) => machine))];
  return {
    kind: 'throughcut-counts',
    version: 1,
    sheets: sheets.map((sheet) => ({
      material: findMaterial(sheet.material)?.id ?? 'other',
      thicknessMm: Math.round(10 * sheet.thicknessMm) / 10,
      machine: `machine ${String(machines.indexOf(sheet.machine) + 1)}`,
      promisedOutOf100: Math.round(100 * sheet.promisedOutOf100) / 100,
      foretoldOutOf100: Math.round(100 * sheet.foretoldOutOf100) / 100,
      parts: sheet.parts,
      out: sheet.out,
    })),
  };
};
