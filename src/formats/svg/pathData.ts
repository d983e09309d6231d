import { PathPen, type PathSink } from './pathPen.ts';
import { PathScanner } from './pathScanner.ts';

/**
 * Tells path data (SVG 2, 9.3) to a sink, in absolute coordinates and whole curves. Up to the first slip, as browsers
 * do; gives back where that is. O(signs), without keeping anything, whatever the data.
 */
export const readPathData = (data: string, sink: PathSink): string | undefined => {
  const scanner = new PathScanner(data);
  const pen = new PathPen(sink);
  let first = true;
  while (!scanner.atEnd() && sink.stopped === undefined) {
    const letter = scanner.letter();
    const kind = letter?.toUpperCase() ?? '';
    const count = counts[kind];
    if (letter === undefined || count === undefined || (first && kind !== 'M'))
      return scanner.slip();
    first = false;
    if (kind === 'Z') {
      pen.close();
      continue;
    }
    const relative = letter !== kind;
    let now = kind;
    do {
      const figures = scanner.figures(count, kind === 'A');
      if (figures === undefined) return scanner.slip();
      pen.draw(now, figures, relative);
      // Further figures after a move are lines.
      if (now === 'M') now = 'L';
    } while (scanner.goesOn());
  }
  return undefined;
};

/** Figures that each command takes. */
const counts: Readonly<Record<string, number>> = {
  M: 2,
  L: 2,
  H: 1,
  V: 1,
  C: 6,
  S: 4,
  Q: 4,
  T: 2,
  A: 7,
  Z: 0,
};
