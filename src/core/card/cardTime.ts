import { distanceMm, type Point } from '../path/point.ts';
import { segmentsOf, type Polyline } from '../path/polyline.ts';
import type { Card } from './card.ts';
import { cardDrawing, type DrawnLayer } from './cardDrawing.ts';

/**
 * What is assumed of a machine whose motion nobody has measured: it stops at every corner sharper than 30°, starts and
 * stops at this acceleration, and travels at this speed. Common practice, no source; the band says how far it may be off.
 */
const assumed = {
  likely: { accelerationMmPerS2: 800, travelMmPerS: 200, startS: 0.02 },
  quick: { accelerationMmPerS2: 4000, travelMmPerS: 400, startS: 0 },
  slow: { accelerationMmPerS2: 200, travelMmPerS: 80, startS: 0.12 },
} as const;

interface Motion {
  readonly accelerationMmPerS2: number;
  readonly travelMmPerS: number;
  /** Lost at each start of a line: beam on, air, the controller's pause. */
  readonly startS: number;
}

export interface TimeEstimate {
  readonly seconds: number;
  /** A quick and a slow machine: the time lies between them as good as always. */
  readonly lowSeconds: number;
  readonly highSeconds: number;
}

export interface CardTime extends TimeEstimate {
  /** By layer, in the order of cutting, travel to it included. */
  readonly layers: readonly { readonly name: string; readonly seconds: number }[];
}

/**
 * How long a card takes, from lengths, speeds, corners and travel. A layer without a setting counts as travel.
 * O(points), ~1 ms for 24 cells.
 */
export const cardTime = (card: Card): CardTime => {
  const { layers } = cardDrawing(card);
  const likely = layerTimes(layers, assumed.likely);
  return {
    seconds: sum(likely),
    lowSeconds: sum(layerTimes(layers, assumed.quick)),
    highSeconds: sum(layerTimes(layers, assumed.slow)),
    layers: layers.map(({ name }, i) => ({ name, seconds: likely[i] ?? 0 })),
  };
};

const sum = (values: readonly number[]): number =>
  values.reduce((total, value) => total + value, 0);

const layerTimes = (layers: readonly DrawnLayer[], motion: Motion): readonly number[] => {
  let head: Point = [0, 0];
  return layers.map(({ polylines, setting }) =>
    sum(
      polylines.map((line) => {
        const start = line[0] ?? head;
        const travel = moveTime(distanceMm(head, start), motion.travelMmPerS, motion);
        head = line.at(-1) ?? start;
        const speed = setting?.speedMmPerS ?? motion.travelMmPerS;
        const once = sum(runs(line).map((length) => moveTime(length, speed, motion)));
        return travel + motion.startS + (setting?.passes ?? 1) * once;
      }),
    ),
  );
};

/** From rest to rest over a length: a trapezoid of speed, or a triangle where the length is too short for the speed. */
const moveTime = (lengthMm: number, speedMmPerS: number, motion: Motion): number => {
  const a = motion.accelerationMmPerS2;
  return lengthMm >= speedMmPerS ** 2 / a
    ? lengthMm / speedMmPerS + speedMmPerS / a
    : 2 * Math.sqrt(lengthMm / a);
};

const sharpTurn = Math.cos(Math.PI / 6);

/** Lengths between corners where the head stops. */
const runs = (line: Polyline): readonly number[] => {
  const lengths: number[] = [];
  let [dx, dy] = [0, 0];
  for (const [from, to] of segmentsOf(line)) {
    const length = distanceMm(from, to);
    if (length === 0) continue;
    const [nx, ny] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    const last = lengths.at(-1);
    if (last === undefined || nx * dx + ny * dy < sharpTurn) lengths.push(length);
    else lengths[lengths.length - 1] = last + length;
    [dx, dy] = [nx, ny];
  }
  return lengths;
};
