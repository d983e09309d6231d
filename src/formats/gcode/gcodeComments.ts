/** What a comment may hold: plain signs, and no bracket of its own. */
export const comment = (text: string): string =>
  `(${text
    .replaceAll('’', "'")
    .replaceAll(/[()]/g, ' ')
    .replaceAll(/[^ -~]/g, '?')})`;

/** Some controllers read no more than 80 signs of a line. */
const mostSigns = 76;

/** A longer text as comments, broken between words. */
export const comments = (text: string): readonly string[] => {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + word.length < mostSigns) {
      lines[lines.length - 1] = `${last} ${word}`;
    } else lines.push(word);
  }
  return lines.map(comment);
};
