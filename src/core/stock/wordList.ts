/** A list written as people write one: `oak, lime wood, olive wood`, over as many lines as it takes. */
export const wordList = (listed: string): readonly string[] =>
  listed.split(',').map((word) => word.trim().replace(/\s+/g, ' '));
