import { z } from 'zod';
import type { TubePoint } from '../../../core/machine/machine.ts';

/** What was typed so far: mA by setting, once going up and once coming down. */
export interface MeterDraft {
  readonly up: Readonly<Record<string, number>>;
  readonly down: Readonly<Record<string, number>>;
  /** Settings that the person added to the list. */
  readonly own: readonly number[];
  readonly waterC?: number | undefined;
}

export type Round = 'up' | 'down';

export const emptyDraft: MeterDraft = { up: {}, down: {}, own: [] };

/** The draft with one reading said, or taken out again. */
export const withReading = (
  draft: MeterDraft,
  round: Round,
  powerPct: number,
  currentMa: number | undefined,
): MeterDraft => {
  const others = Object.entries(draft[round]).filter(([pct]) => pct !== String(powerPct));
  const said = currentMa === undefined ? [] : [[String(powerPct), currentMa] as const];
  return { ...draft, [round]: Object.fromEntries([...others, ...said]) };
};

/** All readings in the order in which they were read: up the list, then down again. */
export const readingsOf = ({ up, down }: MeterDraft): readonly TubePoint[] => [
  ...ascending(up),
  ...ascending(down).toReversed(),
];

const ascending = (round: MeterDraft['up']): readonly TubePoint[] =>
  Object.entries(round)
    .map(([powerPct, currentMa]) => ({ powerPct: Number(powerPct), currentMa }))
    .sort((a, b) => a.powerPct - b.powerPct);

const figures = z.record(z.string(), z.number());
const shape = z.object({
  up: figures,
  down: figures,
  own: z.array(z.number()),
  waterC: z.number().optional(),
});

/** The draft that lies in this browser: a phone that sleeps between two readings loses none. */
export const readMeterDraft = (value: unknown): MeterDraft | undefined =>
  shape.safeParse(value).data;
