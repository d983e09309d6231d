/** A longer text in lines of no more than so many signs, broken between words. */
export const brokenInto = (text: string, mostSigns: number): readonly string[] => {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + word.length < mostSigns) {
      lines[lines.length - 1] = `${last} ${word}`;
    } else lines.push(word);
  }
  return lines;
};
