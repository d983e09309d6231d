import type { GcodeWord } from './gcodeWords.ts';

/** The modal groups that a laser meets (RS-274/NGC, tables of G and M codes). Of each group one word a line at most. */
const gGroups: Readonly<Record<string, readonly number[]>> = {
  motion: [0, 1, 2, 3, 38.2, 80, 81, 82, 83, 84, 85, 86, 87, 88, 89],
  plane: [17, 18, 19],
  distance: [90, 91],
  'feed mode': [93, 94],
  units: [20, 21],
  'non-modal': [4, 10, 28, 30, 53, 92, 92.1, 92.2, 92.3],
  'cutter compensation': [40, 41, 42],
  'length offset': [43, 49],
  'return mode': [98, 99],
  'coordinate system': [54, 55, 56, 57, 58, 59, 59.1, 59.2, 59.3],
  'path control': [61, 61.1, 64],
};
const mGroups: Readonly<Record<string, readonly number[]>> = {
  stop: [0, 1, 2, 30, 60],
  spindle: [3, 4, 5],
  override: [48, 49],
};
/** Mist and flood may both be on; off goes with neither. */
const coolantWords = [7, 8, 9];

/** Looked up for every word of a program, so by one step rather than by search. */
const byValue = (
  groups: Readonly<Record<string, readonly number[]>>,
): ReadonlyMap<number, string> =>
  new Map(
    Object.entries(groups).flatMap(([name, values]) =>
      values.map((value): [number, string] => [value, name]),
    ),
  );
const ofG = byValue(gGroups);
const ofM = byValue({ ...mGroups, coolant: coolantWords });

export const groupOf = ({ letter, value }: GcodeWord): string | undefined => {
  if (letter === 'G') return ofG.get(value);
  return letter === 'M' ? ofM.get(value) : undefined;
};

/** What the report forbids on one line: two words of a group, any other letter twice. */
export const conflictIn = (words: readonly GcodeWord[]): string | undefined => {
  const seen = new Set<string>();
  for (const word of words) {
    const group = groupOf(word);
    const isCode = word.letter === 'G' || word.letter === 'M';
    if (isCode && (group === undefined || group === 'coolant')) continue;
    const name = isCode ? `${word.letter} words of group ${group ?? ''}` : `${word.letter} words`;
    if (seen.has(name)) return `two ${name} on one line`;
    seen.add(name);
  }
  return undefined;
};
