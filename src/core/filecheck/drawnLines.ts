import type { PathLine } from './toolpath.ts';

/** A fill without a stroke is no line to go along, unless the drawing has nothing else. */
export const drawnLines = (lines: readonly PathLine[]): readonly PathLine[] => {
  const stroked = lines.filter(({ isStrokeless }) => isStrokeless !== true);
  return stroked.length === 0 ? lines : stroked;
};
