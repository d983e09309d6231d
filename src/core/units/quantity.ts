import { done, refused, type Outcome } from '../problem.ts';
import type { QuantityKind } from '../problems/units.ts';
import { parseNumber } from './parseNumber.ts';

/** One kind of quantity: how many base units each unit is, by every way of writing it. */
export interface Units<Unit extends string> {
  readonly kind: QuantityKind;
  readonly factor: Readonly<Record<Unit, number>>;
  /** Other ways of writing a unit, in lower case without spaces. */
  readonly spellings: Readonly<Record<string, Unit>>;
}

/** Reads a quantity into base units. A figure without a unit is taken in `defaultUnit`. */
export const parseQuantity = <Unit extends string>(
  { kind, factor, spellings }: Units<Unit>,
  text: string,
  defaultUnit: Unit,
): Outcome<number> => {
  const figure = parseNumber(text, kind);
  if (!figure.ok) return figure;
  const { value, rest } = figure.value;
  const unit = unitOf(rest, defaultUnit, factor, spellings);
  if (unit === undefined)
    return refused('quantity-unit-unknown', {
      text,
      kind,
      unit: rest.trim(),
      known: Object.keys(factor).join(', '),
    });
  return done(tidy(value * factor[unit]));
};

const unitOf = <Unit extends string>(
  written: string,
  defaultUnit: Unit,
  factor: Readonly<Record<Unit, number>>,
  spellings: Readonly<Record<string, Unit>>,
): Unit | undefined => {
  const bare = written.toLowerCase().replace(/\s+/g, '').replace(/\.$/, '');
  if (bare === '') return defaultUnit;
  if (Object.hasOwn(spellings, bare)) return spellings[bare];
  return unitNames(factor).find((unit) => unit.toLowerCase() === bare);
};

const unitNames = <Unit extends string>(
  factor: Readonly<Record<Unit, number>>,
): readonly Unit[] => {
  const names: Unit[] = [];
  for (const name in factor) names.push(name);
  return names;
};

/** A quantity in a unit, rounded for reading; the gap does not break at the end of a line. */
export const showQuantity = <Unit extends string>(
  { factor }: Units<Unit>,
  base: number,
  unit: Unit,
  decimals: number,
): string => `${String(Number((base / factor[unit]).toFixed(decimals)))}\u202f${unit}`;

/** Takes away the dust of binary arithmetic, so that 1/8 in and 3.175 mm are the same number. */
const tidy = (value: number): number => Number(value.toPrecision(12));
