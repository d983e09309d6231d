import { z } from 'zod';
import type { FocusReadings, UnkeptFocusTest } from '../../../core/focus/focusTest.ts';
import type { RampLine } from '../../../core/card/rampCard.ts';
import { done, refused, type Outcome } from '../../../core/problem.ts';
import { readLength, readLineWidth } from '../../parts/quantity/readers.ts';

const mm = z.number().min(0).max(2000);
const end = z.object({ mm: mm.optional(), runsOff: z.boolean().optional() });
const shape = z.object({
  ramp: z.object({ lengthMm: mm, blockMm: mm, nozzleGapMm: mm }),
  gaugeMm: mm.optional(),
  setting: z.object({ powerPct: z.number(), speedMmPerS: z.number() }).optional(),
  kind: z.enum(['fades', 'widths']),
  fades: z.record(z.string(), z.object({ from: end, to: end })),
  widths: z.string(),
});

/** One end of a line: where it was read, or that it showed to the strip's end. */
export type LineEnd = z.infer<typeof end>;
/** What was typed so far. */
export type FocusDraft = z.infer<typeof shape>;

export const emptyFocusDraft: FocusDraft = {
  ramp: { lengthMm: 120, blockMm: 6, nozzleGapMm: 10 },
  kind: 'fades',
  fades: {},
  widths: '',
};

/** The readings of the draft, or why they cannot be read; undefined while nothing whole was typed. */
export const readingsIn = (
  { kind, fades, widths }: FocusDraft,
  lines: readonly RampLine[],
): Outcome<FocusReadings | undefined> => {
  if (kind === 'widths') return readWidths(widths);
  const whole = lines.flatMap(({ letter, dose }) => {
    const { from, to } = fades[letter] ?? { from: {}, to: {} };
    const [low, high] = [placeOf(from), placeOf(to)];
    return low === undefined || high === undefined ? [] : [{ fromMm: low, toMm: high, dose }];
  });
  return done(whole.length === 0 ? undefined : { kind: 'fades', lines: whole });
};

const placeOf = ({ mm: place, runsOff = false }: LineEnd): number | null | undefined =>
  runsOff ? null : place;

const pattern = /^([\d.,/]+\s*[a-z"″]*)[\s:;]+([\d.,/]+\s*[a-z"″]*)$/i;

/** What a kept test holds. */
const mostWidths = 200;

const readWidths = (text: string): Outcome<FocusReadings | undefined> => {
  const widths: { alongMm: number; widthMm: number }[] = [];
  for (const line of text.split('\n').map((each) => each.trim())) {
    if (line === '') continue;
    const [, place = '', width = ''] = pattern.exec(line) ?? [];
    const [along, wide] = [readLength(place), readLineWidth(width)];
    if (!along.ok || !wide.ok) return refused('line-not-a-width', { text: line });
    widths.push({ alongMm: along.value, widthMm: wide.value });
  }
  if (widths.length > mostWidths)
    return refused('lines-too-many', { count: widths.length, most: mostWidths });
  return done(widths.length === 0 ? undefined : { kind: 'widths', widths });
};

/** The draft as a test; undefined while there is nothing to read from. */
export const focusTestFrom = (
  draft: FocusDraft,
  readings: FocusReadings | undefined,
  machineId: string,
): UnkeptFocusTest | undefined =>
  readings === undefined
    ? undefined
    : {
        machineId,
        ramp: draft.ramp,
        readings,
        ...(draft.gaugeMm === undefined ? {} : { gaugeMm: draft.gaugeMm }),
      };

/** The draft that lies in this browser. */
export const readFocusDraft = (value: unknown): FocusDraft | undefined =>
  shape.safeParse(value).data;
