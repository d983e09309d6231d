/**
 * Figures as they stand in sentences, each with its unit. A narrow no-break space keeps the two together at the end of a
 * line; the minus is the true one.
 */
const gap = '\u202f';
const trimmed = (value: number, decimals: number): string =>
  String(Number(value.toFixed(decimals))).replace('-', '\u2212');

export const speedWords = (speedMmPerS: number): string => `${trimmed(speedMmPerS, 2)}${gap}mm/s`;

export const powerWords = (powerPct: number): string => `${trimmed(powerPct, 1)}${gap}%`;

export const lengthWords = (lengthMm: number): string =>
  lengthMm >= 2000 ? `${trimmed(lengthMm / 1000, 2)}${gap}m` : `${trimmed(lengthMm, 2)}${gap}mm`;

export const currentWords = (currentMa: number): string => `${trimmed(currentMa, 1)}${gap}mA`;

/** `3.5 s`, `4 min 10 s`, `1 h 5 min`. */
export const durationWords = (seconds: number): string => {
  if (seconds < 60) return `${trimmed(seconds, seconds < 10 ? 1 : 0)}${gap}s`;
  const minutes = Math.floor(seconds / 60);
  if (minutes < 60) return `${String(minutes)}${gap}min ${String(Math.round(seconds % 60))}${gap}s`;
  return `${String(Math.floor(minutes / 60))}${gap}h ${String(minutes % 60)}${gap}min`;
};

/**
 * How many in 100. Near the top one digit is kept for each nine, so that 99.65 is not shown as 100; and never 100 or 0,
 * which nobody can promise.
 */
export const inHundred = (outOf100: number): string => {
  if (outOf100 > 99.95) return 'more than 99.9';
  if (outOf100 >= 99) return trimmed(outOf100, outOf100 >= 99.5 ? 2 : 1);
  if (outOf100 < 1) return 'fewer than 1';
  return trimmed(outOf100, 0);
};

/** How many in 100 on average: a mean, not a promise, so a tenth at most. */
export const onAverageInHundred = (outOf100: number): string => {
  if (outOf100 >= 99.95) return 'more than 99.9';
  if (outOf100 < 1) return 'fewer than 1';
  return trimmed(outOf100, outOf100 >= 98 ? 1 : 0);
};

/** How sure, in per cent; never 100. */
export const sureWords = (surePct: number): string => {
  if (surePct > 99.5) return `more than 99${gap}%`;
  if (surePct < 1) return `less than 1${gap}%`;
  return `${trimmed(surePct, 0)}${gap}%`;
};

/** `1 cell`, `3 cells`. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${String(count)} ${count === 1 ? one : many}`;

/** `A, B and C`. */
export const listed = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;
