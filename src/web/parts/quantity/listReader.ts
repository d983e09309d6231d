import { done, refused, type Outcome } from '../../../core/problem.ts';

type ReadOne = (text: string) => Outcome<number>;

/** Most numbers that one list may unfold to. */
const mostNumbers = 60;

/**
 * Reads a list of quantities as people write it: `10, 12.5, 15 mm/s`, `10 15 20`, `10 to 30 by 5 mm/s`. A unit behind
 * the last figure holds for all that have none of their own.
 */
export const readList =
  (readOne: ReadOne) =>
  (text: string): Outcome<readonly number[]> => {
    const range =
      /^\s*([\d.,]+)\s*(?:to|-|–)\s*([\d.,]+)\s*(?:by|step|in steps of)\s*([\d.,]+)\s*(.*)$/i.exec(
        text,
      );
    if (range !== null) return readRange(readOne, range);
    const unit = /[\d.]\s*([^\d\s.,;][^\d,;]*)$/.exec(text)?.[1]?.trim() ?? '';
    const pieces = figuresOf(text);
    if (pieces === undefined) return refused('list-comma-unclear', { text: text.trim() });
    if (pieces.length === 0 && text.trim() !== '') return all([readOne(text)]);
    return all(
      pieces.map((piece) => readOne(/^[\d.,]+$/.test(piece) ? `${piece} ${unit}`.trim() : piece)),
    );
  };

/**
 * The figures of a list. A comma with a figure on both sides is a decimal point where blanks or semicolons part the
 * figures (`3,1 3,15`) and parts them where nothing else does (`10,12,14`). Undefined where it may be either: `3,1`
 * alone, or `10, 12,5`.
 */
const figuresOf = (text: string): readonly string[] | undefined => {
  const pieces = text.split(/[;\s]+/).filter((piece) => /\d/.test(piece));
  const bare = pieces.map((piece) => piece.replace(/,+$/, ''));
  const inner = bare.filter((piece) => /\d,\d/.test(piece));
  if (inner.length === 0) return bare.flatMap((piece) => piece.split(',')).filter(Boolean);
  const [only = ''] = bare;
  if (bare.length === 1) {
    const parts = only.split(',');
    return parts.length > 2 ? parts : undefined;
  }
  const commasPart = pieces.some((piece) => piece.endsWith(','));
  return commasPart && inner.length < bare.length ? undefined : bare;
};

const readRange = (readOne: ReadOne, range: RegExpExecArray): Outcome<readonly number[]> => {
  const [, from = '', to = '', by = '', unit = ''] = range;
  const read = all([from, to, by].map((figure) => readOne(`${figure} ${unit}`)));
  if (!read.ok) return read;
  const [first = 0, last = 0, step = 0] = read.value;
  const count = Math.floor((last - first) / step + 1e-9) + 1;
  if (!(step > 0) || !(count >= 1) || count > mostNumbers) {
    return refused('list-does-not-step', { text: range[0].trim() });
  }
  return done(Array.from({ length: count }, (_, i) => Number((first + i * step).toFixed(6))));
};

const all = (outcomes: readonly Outcome<number>[]): Outcome<readonly number[]> => {
  const values: number[] = [];
  for (const outcome of outcomes) {
    if (!outcome.ok) return outcome;
    values.push(outcome.value);
  }
  return values.length > mostNumbers
    ? refused('list-too-long', { count: values.length, most: mostNumbers })
    : done(values);
};
