import { z } from 'zod';
import type { KeptStock } from '../../../core/book/keptStock.ts';
import { combPlaceCounts, type PlacedComb } from '../../../core/kerf/combSheet.ts';
import { slotFits, type SlotRead } from '../../../core/kerf/joints.ts';
import { combDirections, usualCombMeasure, type KerfComb } from '../../../core/kerf/kerfComb.ts';
import type { KerfSubject, UnkeptKerfTest } from '../../../core/kerf/kerfTest.ts';

const mm = z.number().positive().max(100_000);

const shape = z.object({
  pieceMm: z.tuple([mm, mm]),
  places: z.union(combPlaceCounts.map((count) => z.literal(count))).optional(),
  directions: z.enum(['both', ...combDirections]).optional(),
  scoring: z
    .object({ powerPct: z.number(), speedMmPerS: z.number(), passes: z.literal(1) })
    .optional(),
  /** How often everything is measured. */
  times: z.number().int().min(1).max(9),
  /** By comb: what was measured each time. */
  strips: z.record(z.string(), z.array(mm.nullable())),
  bars: z.record(z.string(), z.array(mm.nullable())),
  tongueMm: mm.optional(),
  /** By width as drawn, in hundredths of a mm. */
  fits: z.record(z.string(), z.enum(slotFits)),
  batch: z.string().optional(),
});

/** What was chosen and typed so far. */
export type KerfDraft = z.infer<typeof shape>;

export const emptyKerfDraft: KerfDraft = {
  pieceMm: [300, 200],
  times: 1,
  strips: {},
  bars: {},
  fits: {},
};

/** The draft that lies in this browser. */
export const readKerfDraft = (value: unknown): KerfDraft | undefined => shape.safeParse(value).data;

/** The combs of which the strips were measured; the bar where it was too. */
export const combsIn = (
  { strips, bars, times }: KerfDraft,
  placed: readonly PlacedComb[],
): readonly KerfComb[] =>
  placed.flatMap(({ label, direction, strips: count, nominalMm }) => {
    const measuredMm = typedOf(strips[label], times);
    const barMm = typedOf(bars[label], times);
    return measuredMm.length === 0
      ? []
      : [
          {
            place: label,
            direction,
            strips: count,
            nominalMm,
            measuredMm,
            ...(barMm.length === 0 ? {} : { barMm }),
          },
        ];
  });

const typedOf = (values: readonly (number | null)[] | undefined, times: number): number[] =>
  (values ?? []).slice(0, times).flatMap((value) => value ?? []);

/** A list with one place filled anew. */
export const withTime = (
  values: readonly (number | null)[] | undefined,
  index: number,
  value: number | undefined,
): (number | null)[] =>
  Array.from({ length: Math.max(index + 1, values?.length ?? 0) }, (_, i) =>
    i === index ? (value ?? null) : (values?.[i] ?? null),
  );

export const fitKey = (drawnMm: number): string => drawnMm.toFixed(2);

/** The slots of which it was said how the tongue goes in. */
export const slotsIn = ({ fits }: KerfDraft, widthsMm: readonly number[]): readonly SlotRead[] =>
  widthsMm.flatMap((drawnMm) => {
    const fit = fits[fitKey(drawnMm)];
    return fit === undefined ? [] : [{ drawnMm, fit }];
  });

/** The draft as a test; undefined while nothing was measured. */
export const kerfTestFrom = (
  { setting, stock, machineId }: KerfSubject,
  read: {
    readonly combs: readonly KerfComb[];
    readonly slots: readonly SlotRead[];
    readonly tongueMm: number;
    readonly batch: string;
  },
): UnkeptKerfTest | undefined => {
  const { combs, slots, tongueMm } = read;
  if (combs.length === 0 && slots.length < 2) return undefined;
  return {
    ...(machineId === undefined ? {} : { machineId }),
    setting,
    stock: stockOfBatch(stock, read.batch),
    combs,
    measure: usualCombMeasure,
    ...(slots.length < 2 ? {} : { slots, tongueMm }),
  };
};

/** A sheet of another batch is another sheet, too. */
export const stockOfBatch = (stock: KeptStock, typed: string): KeptStock => {
  const batch = typed.trim();
  if (batch === (stock.batch ?? '')) return stock;
  const { material, materialKnown, nominalThicknessMm, measuredThicknessMm } = stock;
  return {
    material,
    ...(materialKnown === undefined ? {} : { materialKnown }),
    nominalThicknessMm,
    ...(measuredThicknessMm === undefined ? {} : { measuredThicknessMm }),
    ...(batch === '' ? {} : { batch }),
  };
};
