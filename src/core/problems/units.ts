import { oneOf, text, type ProblemList } from './param.ts';

/** What a person may type a figure of. */
const quantityKinds = [
  'number',
  'length',
  'speed',
  'pressure',
  'power',
  'strength',
  'current',
  'temperature',
  'acceleration',
  'duration',
] as const;

export type QuantityKind = (typeof quantityKinds)[number];

const kind = oneOf(quantityKinds);

/** What can be the matter with a quantity that a person typed. */
export const unitProblems = {
  'quantity-empty': { kind },
  'quantity-not-a-number': { text, kind },
  'quantity-negative': { text, kind },
  'quantity-figure-alone': { text },
  'quantity-not-whole': { text },
  'quantity-out-of-range': { kind, least: text, most: text },
  'quantity-ambiguous': { text, decimal: text, thousands: text, kind },
  'quantity-unit-unknown': { text, kind, unit: text, known: text },
  'power-setting-above-100': { text },
} as const satisfies ProblemList;

export type UnitCode = keyof typeof unitProblems;
