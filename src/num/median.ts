/** The middle value, or the mean of the two in the middle; undefined of none. */
export const median = (values: readonly number[]): number | undefined => {
  const sorted = Float64Array.from(values).sort();
  const upper = sorted[sorted.length >> 1];
  const lower = sorted[(sorted.length - 1) >> 1];
  return upper === undefined || lower === undefined ? undefined : (upper + lower) / 2;
};
