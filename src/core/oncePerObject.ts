/**
 * The same pure function of an object, which makes each answer once and keeps it as long as the object lives. For objects
 * that nobody changes.
 */
export const oncePerObject = <Of extends object, T>(make: (of: Of) => T): ((of: Of) => T) => {
  const made = new WeakMap<Of, { readonly answer: T }>();
  return (of) => {
    const before = made.get(of);
    if (before !== undefined) return before.answer;
    const answer = make(of);
    made.set(of, { answer });
    return answer;
  };
};
