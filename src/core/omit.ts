/** The thing without some of its parts. */
export const omit = <T extends object, K extends keyof T>(
  thing: T,
  ...keys: readonly K[]
): Omit<T, K> => {
  const copy = { ...thing };
  for (const key of keys) Reflect.deleteProperty(copy, key);
  return copy;
};
