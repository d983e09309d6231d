/** Fits of orders take a good part of a second, and each order is counted after those that were fitted with the one before it. */
const mostKept = 24;

/**
 * Remembers the newest results of a pure function by its question: the same question has the same answer, so nothing but time
 * depends on what is remembered. Keys are the question as JSON.
 */
export const rememberNewest = <Q, T>(work: (question: Q) => T): ((question: Q) => T) => {
  const known = new Map<string, T>();
  return (question) => {
    const key = JSON.stringify(question);
    const before = known.get(key);
    known.delete(key);
    const result = before ?? work(question);
    known.set(key, result);
    const [oldest] = known.keys();
    if (known.size > mostKept && oldest !== undefined) known.delete(oldest);
    return result;
  };
};
