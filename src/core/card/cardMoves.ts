import type { MotionValues } from '../motion/motionValues.ts';
import type { Setting } from '../machine/setting.ts';
import type { JobMove } from '../motion/jobTime.ts';
import type { DrawnLayer } from './cardDrawing.ts';

/**
 * What one layer of a card makes the machine do, at its own setting or another. A layer for which nobody said a setting
 * counts as fast as travel.
 */
export const layerMoves = (
  { polylines, setting: own }: DrawnLayer,
  { travelSpeedMmPerS }: MotionValues,
  setting: Setting | undefined = own,
): readonly JobMove[] =>
  polylines.map((points) => ({
    kind: 'cut',
    points,
    speedMmPerS: setting?.speedMmPerS ?? travelSpeedMmPerS,
    passes: setting?.passes ?? 1,
  }));
