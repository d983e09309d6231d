/**
 * The same pure function of a text, which makes each answer once: lists ask of the same few names over and over. Beyond
 * `most` texts it forgets them all.
 */
export const remembered = <T>(of: (text: string) => T, most: number): ((text: string) => T) => {
  const known = new Map<string, { readonly answer: T }>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before.answer;
    const answer = of(text);
    if (known.size >= most) known.clear();
    known.set(text, { answer });
    return answer;
  };
};
