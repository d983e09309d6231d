import type { QuantityKind } from '../problems/units.ts';
import { done, refused, type Outcome } from '../problem.ts';

/** A figure as a person wrote it, and what stands behind it. */
interface Figure {
  readonly value: number;
  readonly rest: string;
}

/**
 * Reads the figure at the start of a text: `3.2`, `3,1`, `.5`, `1/8`, `1 1/8`, `1-1/8`, `⅛`, `1⅛`, `1,200.5`.
 * `1,200` alone is refused: it may be twelve hundred or one and a fifth. A sign in front is refused too.
 * `kind` is what a refusal says that is wanted.
 */
export const parseNumber = (text: string, kind: QuantityKind = 'number'): Outcome<Figure> => {
  const plain = plainFractions(text).trim();
  if (plain === '') return refused('quantity-empty', { kind });
  if (/^[-−–]/.test(plain)) return refused('quantity-negative', { text, kind });
  const fraction = /^(?:(\d+)[\s-]+)?(\d+)\s*\/\s*(\d+)(?![\d.,/])(.*)$/su.exec(plain);
  if (fraction !== null) {
    const [, whole = '0', over = '', under = '', rest = ''] = fraction;
    const value = Number(whole) + Number(over) / Number(under);
    return Number.isFinite(value)
      ? done({ value, rest })
      : refused('quantity-not-a-number', { text, kind });
  }
  const decimal = /^(\d[\d.,]*|[.,]\d+)(.*)$/su.exec(plain);
  if (decimal === null) return refused('quantity-not-a-number', { text, kind });
  const [, digits = '', rest = ''] = decimal;
  if (/^[1-9]\d{0,2},\d{3}$/.test(digits))
    return refused('quantity-ambiguous', {
      text,
      kind,
      decimal: digits.replace(',', '.'),
      thousands: digits.replace(',', ''),
    });
  const value = Number(withPoint(digits));
  return Number.isFinite(value)
    ? done({ value, rest })
    : refused('quantity-not-a-number', { text, kind });
};

/** `⅛` as ` 1/8`. */
const plainFractions = (text: string): string =>
  text.replace(
    /[\u00bc-\u00be\u2150-\u215e]/gu,
    (sign) => ` ${sign.normalize('NFKD').replace('\u2044', '/')}`,
  );

/** Digits with one decimal point, whichever way they were grouped; text that is no number stays none. */
const withPoint = (digits: string): string => {
  if (/^\d{1,3}(,\d{3})+\.\d+$/.test(digits)) return digits.replaceAll(',', '');
  if (/^\d{1,3}(\.\d{3})+,\d+$/.test(digits)) return digits.replaceAll('.', '').replace(',', '.');
  return digits.replace(',', '.');
};
