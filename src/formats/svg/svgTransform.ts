import { shift, stretch, times, turn, unchanged, type Matrix } from '../../core/path/matrix.ts';

/**
 * The value of a `transform` attribute (CSS Transforms 1, 8) as one map: the last named acts first. Undefined where it is
 * none, as then nothing of the list may be carried out. O(signs).
 */
export const readTransform = (text: string): Matrix | undefined => {
  let whole: Matrix = unchanged;
  let at = 0;
  for (;;) {
    call.lastIndex = at;
    const found = call.exec(text);
    if (found === null) break;
    at = call.lastIndex;
    const one = matrixOf(found[1] ?? '', figuresIn(found[2] ?? ''));
    if (one === undefined) return undefined;
    whole = times(whole, one);
  }
  return /^[\s,]*$/.test(text.slice(at)) ? whole : undefined;
};

/** One function and its figures. Each part stops at a sign that the next begins with, so that nothing is tried twice. */
const call = /[\s,]*([a-z]+)\s*\(([^()]*)\)/iy;

const figuresIn = (text: string): readonly number[] => {
  const parts = text.match(/[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?/gi) ?? [];
  return parts.map(Number);
};

const matrixOf = (name: string, figures: readonly number[]): Matrix | undefined => {
  const [a = 0, b, c, d, e, f] = figures;
  const count = figures.length;
  switch (name) {
    case 'matrix':
      return count === 6 ? [a, b ?? 0, c ?? 0, d ?? 0, e ?? 0, f ?? 0] : undefined;
    case 'translate':
      return count === 1 || count === 2 ? shift([a, b ?? 0]) : undefined;
    case 'scale':
      return count === 1 || count === 2 ? stretch(a, b ?? a) : undefined;
    case 'rotate': {
      if (count !== 1 && count !== 3) return undefined;
      const about = turn(rad(a));
      return count === 1
        ? about
        : times(shift([b ?? 0, c ?? 0]), times(about, shift([-(b ?? 0), -(c ?? 0)])));
    }
    case 'skewX':
      return count === 1 ? [1, 0, Math.tan(rad(a)), 1, 0, 0] : undefined;
    case 'skewY':
      return count === 1 ? [1, Math.tan(rad(a)), 0, 1, 0, 0] : undefined;
    default:
      return undefined;
  }
};

const rad = (deg: number): number => (deg * Math.PI) / 180;
