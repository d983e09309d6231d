import { joinTouching } from '../path/joinTouching.ts';
import type { PathLine } from './toolpath.ts';

/**
 * Lines of one layer and setting that touch end to end, put together as one: shapes that a program saved as single
 * strokes can be looked at whole. A joined line stands where the first of its strokes stands.
 */
export const joinLines = (lines: readonly PathLine[]): readonly PathLine[] => {
  const groups = new Map<string, PathLine[]>();
  for (const line of lines) {
    const key = keyOf(line);
    const there = groups.get(key);
    if (there === undefined) groups.set(key, [line]);
    else there.push(line);
  }
  return [...groups.values()]
    .flatMap((group) =>
      joinTouching(group.map(({ points }) => points)).flatMap(({ points, of }) => {
        const [first] = of.flatMap((i) => group[i] ?? []).toSorted((a, b) => a.where - b.where);
        return first === undefined ? [] : [{ ...first, points }];
      }),
    )
    .toSorted((a, b) => a.where - b.where);
};

const keyOf = ({ layer, colour, cell, passes, modal: told }: PathLine): string =>
  [layer, colour, cell?.id, passes, told?.speedMmPerS, told?.s, told?.air, told?.beam].join('|');
