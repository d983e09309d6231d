import { done, refused, type Outcome } from '../problem.ts';
import { parseNumber } from './parseNumber.ts';

/** A figure without a unit behind it: `3`, `0.5`, `1/2`. */
export const parseFigure = (text: string): Outcome<number> => {
  const read = parseNumber(text);
  if (!read.ok) return read;
  const { value, rest } = read.value;
  return rest.trim() === '' ? done(value) : refused('quantity-figure-alone', { text });
};

/** A number of things: `12`, `200.0`, `1,200`, which as a part of one would be no number of things. */
export const parseWhole = (text: string): Outcome<number> => {
  const grouped = /^\s*[1-9]\d{0,2}(?:[.,\s]\d{3})+\s*$/.test(text);
  const read = parseFigure(grouped ? text.replace(/\D/g, '') : text);
  return read.ok && !Number.isInteger(read.value) ? refused('quantity-not-whole', { text }) : read;
};
