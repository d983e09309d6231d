/** Whether two plain values (as JSON has them) say the same, whatever the order of their keys. O(size). */
export const sameValue = (one: unknown, other: unknown): boolean => {
  if (Object.is(one, other)) return true;
  if (!isObject(one) || !isObject(other) || Array.isArray(one) !== Array.isArray(other))
    return false;
  const keys = Object.keys(one);
  return (
    keys.length === Object.keys(other).length &&
    keys.every((key) => Object.hasOwn(other, key) && sameValue(one[key], other[key]))
  );
};

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;
