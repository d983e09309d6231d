/** Names of what may be left out of a thing. */
type OptionalKeys<T> = {
  [K in keyof T]-?: object extends Pick<T, K> ? K : never;
}[keyof T];

/** The thing with one of its optional parts said, or left out again where the value is undefined. */
export const withOptional = <T extends object, K extends OptionalKeys<T>>(
  whole: T,
  name: K,
  value: T[K] | undefined,
): T => {
  const next = { ...whole };
  if (value === undefined) Reflect.deleteProperty(next, name);
  else next[name] = value;
  return next;
};
