import type { PathPlan } from './planPath.ts';

/**
 * Speed along a planned line. Between two neighbouring knots the acceleration is constant, so that v² runs straight in
 * the distance and v straight in time. Two knots at one place: a jump, under unlimited acceleration.
 */
export interface SpeedAlong {
  readonly lengthMm: number;
  readonly seconds: number;
  /** By knot, never falling: how far along, and when. */
  readonly atMm: Float64Array;
  readonly atS: Float64Array;
  readonly speedMmPerS: Float64Array;
}

/** Speed as a function of the distance run. O(points); at most three knots a segment and one more. */
export const speedAlong = (plan: PathPlan): SpeedAlong => {
  const knots = new Knots(3 * plan.segmentMm.length + 1);
  const { accelerationMmPerS2: acceleration } = plan.limits;
  let [runMm, runS] = [0, 0];
  plan.segmentMm.forEach((lengthMm, i) => {
    if (lengthMm === 0) return;
    const [entry, exit] = [plan.speedMmPerS[i] ?? NaN, plan.speedMmPerS[i + 1] ?? NaN];
    const peak = plan.peakMmPerS[i] ?? NaN;
    const risingMm = Math.min(lengthMm, changingMm(entry, peak, acceleration));
    const fallingMm = Math.min(lengthMm - risingMm, changingMm(exit, peak, acceleration));
    const endS = runS + (plan.segmentS[i] ?? NaN);
    knots.add(runMm, runS, entry);
    if (peak > entry)
      knots.add(runMm + risingMm, runS + changingS(entry, peak, acceleration), peak);
    if (peak > exit) {
      knots.add(runMm + lengthMm - fallingMm, endS - changingS(exit, peak, acceleration), peak);
    }
    [runMm, runS] = [runMm + lengthMm, endS];
  });
  knots.add(runMm, runS, 0);
  return { lengthMm: runMm, seconds: runS, ...knots.made() };
};

const changingMm = (slow: number, fast: number, acceleration: number): number =>
  ((fast - slow) * (fast + slow)) / (2 * acceleration);

const changingS = (slow: number, fast: number, acceleration: number): number =>
  (fast - slow) / acceleration;

/** Fills three arrays side by side; distance and time never fall, whatever rounding does. */
class Knots {
  readonly #atMm: Float64Array;
  readonly #atS: Float64Array;
  readonly #speedMmPerS: Float64Array;
  #count = 0;

  constructor(most: number) {
    this.#atMm = new Float64Array(most);
    this.#atS = new Float64Array(most);
    this.#speedMmPerS = new Float64Array(most);
  }

  add(atMm: number, atS: number, speedMmPerS: number): void {
    const last = this.#count - 1;
    this.#atMm[this.#count] = Math.max(atMm, this.#atMm[last] ?? 0);
    this.#atS[this.#count] = Math.max(atS, this.#atS[last] ?? 0);
    this.#speedMmPerS[this.#count] = speedMmPerS;
    this.#count += 1;
  }

  made(): Pick<SpeedAlong, 'atMm' | 'atS' | 'speedMmPerS'> {
    return {
      atMm: this.#atMm.slice(0, this.#count),
      atS: this.#atS.slice(0, this.#count),
      speedMmPerS: this.#speedMmPerS.slice(0, this.#count),
    };
  }
}

/** The speed after so much of the line, in mm/s; at its ends and beyond, the speed there: 0. O(log knots). */
export const speedAt = (along: SpeedAlong, atMm: number): number => {
  if (along.atMm.length < 2) return 0;
  const i = pieceAt(along.atMm, atMm);
  const [from, to] = [along.atMm[i] ?? NaN, along.atMm[i + 1] ?? NaN];
  const [before, after] = [along.speedMmPerS[i] ?? NaN, along.speedMmPerS[i + 1] ?? NaN];
  const share = to > from ? Math.min(1, Math.max(0, (atMm - from) / (to - from))) : 1;
  return Math.sqrt(before * before + share * (after * after - before * before));
};

/** The piece between knots i and i + 1 that holds a place: the last that begins at or before it. */
export const pieceAt = (ascending: Float64Array, value: number): number => {
  let [low, high] = [0, Math.max(0, ascending.length - 2)];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((ascending[middle] ?? NaN) <= value) low = middle;
    else high = middle - 1;
  }
  return low;
};
