import { boxAround, type Box } from './box.ts';
import { distanceMm, type Point } from './point.ts';
import { lengthMm, type Polyline } from './polyline.ts';

/** How far a wanted line is gone over, however it was cut up, joined or turned about. */
export interface StrokeCover {
  readonly lengthMm: number;
  /** Share of it that something lies along. */
  readonly share: number;
  /** How often it is gone over, on average. */
  readonly times: number;
  /** Share of it that is gone over more or less often than that, to the nearest whole number. */
  readonly unevenShare: number;
}

/** What a line that is there goes along. */
export interface LineCover {
  /** By the place of the wanted line, in mm; those that it does not touch are missing. */
  readonly onStroke: ReadonlyMap<number, number>;
  /** What lies along nothing that is wanted, in mm, and where. */
  readonly strayMm: number;
  readonly strayBox?: Box;
}

export interface Cover {
  readonly strokes: readonly StrokeCover[];
  readonly lines: readonly LineCover[];
}

/** Wanted lines are looked at in bins of this length, those that are there in steps of this, in mm. */
const binMm = 0.5;
const stepMm = 0.1;
/** Longer drawings are looked at in longer steps. */
const mostSteps = 400_000;
const gridMm = 1;

interface Bin {
  readonly stroke: number;
  readonly from: Point;
  readonly to: Point;
  readonly lengthMm: number;
  mm: number;
  isNear: boolean;
}

/** Lines that are wanted, laid out so that whatever lies along them is found: {@link Wanted.cover}. */
export class Wanted {
  readonly #bins: Bin[] = [];
  readonly #grid = new Map<number, Bin[]>();
  readonly #strokes: readonly Polyline[];
  readonly #toleranceMm: number;

  constructor(strokes: readonly Polyline[], toleranceMm: number) {
    this.#strokes = strokes;
    this.#toleranceMm = toleranceMm;
    strokes.forEach((stroke, i) => {
      for (const [from, to] of pieces(stroke, binMm)) {
        const bin = { stroke: i, from, to, lengthMm: distanceMm(from, to), mm: 0, isNear: false };
        this.#bins.push(bin);
        this.#file(bin);
      }
    });
  }

  /** How many of some places lie along a wanted line. */
  hits(places: readonly Point[]): number {
    return places.reduce((sum, at) => sum + (this.#isNear(at) ? 1 : 0), 0);
  }

  /**
   * Goes along every line in small steps: each step counts for the nearest wanted line within the tolerance, of several as
   * near for the one that was gone over least. O(length).
   */
  cover(lines: readonly Polyline[]): Cover {
    for (const bin of this.#bins) {
      bin.mm = 0;
      bin.isNear = false;
    }
    const total = lines.reduce((sum, line) => sum + lengthMm(line), 0);
    const step = Math.max(stepMm, total / mostSteps);
    const covered = lines.map((line) => this.#along(line, step));
    return { strokes: this.#strokeCovers(), lines: covered };
  }

  #along(line: Polyline, step: number): LineCover {
    const onStroke = new Map<number, number>();
    const stray: Point[] = [];
    let strayMm = 0;
    for (const [from, to] of pieces(line, step)) {
      const mm = distanceMm(from, to);
      const bin = this.#take((from[0] + to[0]) / 2, (from[1] + to[1]) / 2, mm);
      if (bin !== undefined) onStroke.set(bin.stroke, (onStroke.get(bin.stroke) ?? 0) + mm);
      else {
        strayMm += mm;
        stray.push(from, to);
      }
    }
    const strayBox = boxAround([stray]);
    return { onStroke, strayMm, ...(strayBox === undefined ? {} : { strayBox }) };
  }

  /** Makes nothing on the way: this is done for every tenth of a millimetre. */
  #take(x: number, y: number, mm: number): Bin | undefined {
    let best: Bin | undefined;
    let bestOff = Infinity;
    for (const bin of this.#grid.get(keyOf(gridAt(x), gridAt(y))) ?? []) {
      const off = distanceToMm(x, y, bin);
      if (off > this.#toleranceMm) continue;
      bin.isNear = true;
      const isAsNear = Math.abs(off - bestOff) <= asNearMm;
      if (isAsNear ? best === undefined || isLess(bin, best) : off < bestOff) best = bin;
      bestOff = Math.min(bestOff, off);
    }
    if (best !== undefined) best.mm += mm;
    return best;
  }

  #isNear([x, y]: Point): boolean {
    const there = this.#grid.get(keyOf(gridAt(x), gridAt(y))) ?? [];
    return there.some((bin) => distanceToMm(x, y, bin) <= this.#toleranceMm);
  }

  #file(bin: Bin): void {
    const reach = this.#toleranceMm;
    const range = (a: number, b: number): readonly [number, number] => [
      gridAt(Math.min(a, b) - reach),
      gridAt(Math.max(a, b) + reach),
    ];
    const [left, right] = range(bin.from[0], bin.to[0]);
    const [bottom, top] = range(bin.from[1], bin.to[1]);
    for (let x = left; x <= right; x += 1)
      for (let y = bottom; y <= top; y += 1) {
        const there = this.#grid.get(keyOf(x, y));
        if (there === undefined) this.#grid.set(keyOf(x, y), [bin]);
        else there.push(bin);
      }
  }

  #strokeCovers(): readonly StrokeCover[] {
    const sums = this.#strokes.map(() => ({ lengthMm: 0, nearMm: 0, mm: 0, unevenMm: 0 }));
    for (const bin of this.#bins) {
      const sum = sums[bin.stroke];
      if (sum === undefined) continue;
      sum.lengthMm += bin.lengthMm;
      sum.mm += bin.mm;
      if (bin.isNear) sum.nearMm += bin.lengthMm;
    }
    const whole = sums.map(({ mm, lengthMm: length }) => Math.max(1, Math.round(mm / length)));
    for (const bin of this.#bins) {
      const sum = sums[bin.stroke];
      if (sum !== undefined && Math.abs(bin.mm / bin.lengthMm - (whole[bin.stroke] ?? 1)) > 0.6)
        sum.unevenMm += bin.lengthMm;
    }
    return sums.map((sum) => ({
      lengthMm: sum.lengthMm,
      share: share(sum.nearMm, sum.lengthMm),
      times: share(sum.mm, sum.lengthMm),
      unevenShare: share(sum.unevenMm, sum.lengthMm),
    }));
  }
}

/** Bins no further off than this from the nearest are as near, mm. */
const asNearMm = 0.02;

const share = (part: number, whole: number): number => (whole > 0 ? part / whole : 0);

const gridAt = (mm: number): number => Math.floor(mm / gridMm);
const keyOf = (x: number, y: number): number => x * 2_097_152 + y;

/** A line in pieces of equal length between its points, none longer than asked. */
function* pieces(line: Polyline, mostMm: number): Generator<readonly [from: Point, to: Point]> {
  for (let i = 1; i < line.length; i += 1) {
    const from = line[i - 1];
    const to = line[i];
    if (from === undefined || to === undefined) continue;
    const count = Math.ceil(distanceMm(from, to) / mostMm);
    let last = from;
    for (let n = 1; n <= count; n += 1) {
      const share = n / count;
      const next: Point = [
        from[0] + share * (to[0] - from[0]),
        from[1] + share * (to[1] - from[1]),
      ];
      yield [last, next];
      last = next;
    }
  }
}

const distanceToMm = (x: number, y: number, { from, to }: Bin): number => {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const square = dx * dx + dy * dy;
  const along =
    square === 0 ? 0 : Math.min(1, Math.max(0, ((x - from[0]) * dx + (y - from[1]) * dy) / square));
  const offX = x - from[0] - along * dx;
  const offY = y - from[1] - along * dy;
  return Math.sqrt(offX * offX + offY * offY);
};

/** Gone over less, for its length. */
const isLess = (a: Bin, b: Bin): boolean => a.mm * b.lengthMm < b.mm * a.lengthMm;
