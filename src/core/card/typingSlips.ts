import { typed } from './settingWords.ts';

/** How a figure may come to be typed wrong. `not-changed`: what stood there before was left. */
export const slipKinds = ['digit-dropped', 'digits-swapped', 'point-lost', 'not-changed'] as const;
export type SlipKind = (typeof slipKinds)[number];

export interface FigureSlip {
  readonly kind: SlipKind;
  /** What was typed instead. */
  readonly value: number;
}

/**
 * What a figure may have been typed as: one digit left out, two neighbours swapped, the decimal point lost (drawings write
 * 14 as 14.0, which then is 140), or one of the figures that stood there before. Above 0, none twice, the figure itself not
 * among them. Which slips are common: common practice, no source.
 */
export const slipsOf = (figure: number, before: readonly number[]): readonly FigureSlip[] => {
  const text = typed(figure);
  const signs = Array.from(text);
  const without = (i: number): string => signs.filter((_, k) => k !== i).join('');
  const dropped = signs.flatMap((sign, i) => (sign === '.' ? [] : [without(i)]));
  const swapped = signs.flatMap((sign, i) => {
    const next = signs[i + 1];
    if (next === undefined || sign === '.' || next === '.') return [];
    return [[...signs.slice(0, i), next, sign, ...signs.slice(i + 2)].join('')];
  });
  const lost = text.includes('.') ? text.replace('.', '') : `${text}0`;
  const of = (kind: SlipKind, values: readonly (string | number)[]): readonly FigureSlip[] =>
    values.map((value) => ({ kind, value: Number(value) }));
  return [
    ...of('not-changed', before),
    ...of('digit-dropped', dropped),
    ...of('digits-swapped', swapped),
    ...of('point-lost', [lost]),
  ].filter(
    ({ value }, i, all) =>
      value > 0 && value !== figure && all.findIndex((other) => other.value === value) === i,
  );
};
