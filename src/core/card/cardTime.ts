import type { MotionValues } from '../motion/motionValues.ts';
import { jobTime, type TimeGoes } from '../motion/jobTime.ts';
import { assumedMotion, timeBand } from '../motion/timeBand.ts';
import type { Point } from '../path/point.ts';
import type { Card } from './card.ts';
import { cardDrawing, type DrawnLayer } from './cardDrawing.ts';
import { layerMoves } from './cardMoves.ts';

export interface TimeEstimate {
  readonly seconds: number;
  /** The time lies between these as good as always. */
  readonly lowSeconds: number;
  readonly highSeconds: number;
  /** Whether the machine's own motion is known, or a common one stands for it: then the band is wide. */
  readonly motion: 'known' | 'assumed';
  /** Together `seconds`. */
  readonly goes: TimeGoes;
}

export interface CardTime extends TimeEstimate {
  /** By layer, in the order of cutting, travel to it included; what a job costs once is in none of them. */
  readonly layers: readonly {
    readonly name: string;
    readonly rung?: string;
    readonly seconds: number;
  }[];
}

/**
 * How long a card takes: planned with the machine's motion where that is known, with a slow, a common and a quick machine
 * where it is not. O(points), ~10 ms for 24 cells.
 */
export const cardTime = (card: Card, motion?: MotionValues): CardTime => {
  const { layers } = cardDrawing(card);
  const used = motion ?? assumedMotion.likely;
  const likely = layerTimes(layers, used);
  const sum = (part: keyof TimeGoes): number =>
    likely.reduce((total, time) => total + time[part], 0);
  const goes = {
    cuttingS: sum('cuttingS'),
    cornersS: sum('cornersS'),
    travelS: sum('travelS'),
    delaysS: sum('delaysS') + (used.jobDelayS ?? 0),
  };
  return {
    ...timeBand(motion, (values) =>
      layerTimes(layers, values).reduce(
        (total, { seconds }) => total + seconds,
        values.jobDelayS ?? 0,
      ),
    ),
    goes,
    layers: layers.map(({ name, rung }, i) => ({
      name,
      ...(rung === undefined ? {} : { rung }),
      seconds: likely[i]?.seconds ?? NaN,
    })),
  };
};

/** Layer after layer, the head going on from where the one before left it. */
const layerTimes = (
  layers: readonly DrawnLayer[],
  motion: MotionValues,
): readonly (TimeGoes & { readonly seconds: number })[] => {
  let head: Point = [0, 0];
  return layers.map((layer) => {
    const time = jobTime(layerMoves(layer, motion), motion, head);
    head = time.at;
    return time;
  });
};
