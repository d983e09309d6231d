const most = 64;

/**
 * Remembers the newest results of a pure and slow function by its question, so that a page, its list and its table do not
 * each work out the same. Keys are the question as JSON.
 */
export const workedOutOnce = <Q, T>(work: (question: Q) => T): ((question: Q) => T) => {
  const known = new Map<string, T>();
  return (question) => {
    const key = JSON.stringify(question);
    const before = known.get(key);
    if (before !== undefined) {
      known.delete(key);
      known.set(key, before);
      return before;
    }
    const result = work(question);
    known.set(key, result);
    const [oldest] = known.keys();
    if (known.size > most && oldest !== undefined) known.delete(oldest);
    return result;
  };
};
