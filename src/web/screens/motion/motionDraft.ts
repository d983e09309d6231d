import type { CornerRule, MotionValues } from '../../../core/motion/motionValues.ts';
import { bounds } from '../../../formats/saved/limits.ts';
import { withOptional } from '../../state/withOptional.ts';

/** How a machine moves as far as it was typed; whatever is absent is not known yet. */
export interface MotionDraft {
  readonly rule: CornerRule['rule'];
  readonly accelerationMmPerS2?: number | undefined;
  readonly deviationMm?: number | undefined;
  readonly xMmPerS?: number | undefined;
  readonly yMmPerS?: number | undefined;
  readonly travelSpeedMmPerS?: number | undefined;
}

export const draftOf = (motion: MotionValues | undefined): MotionDraft =>
  motion === undefined
    ? { rule: 'speed-jump' }
    : {
        ...motion.corner,
        accelerationMmPerS2: motion.accelerationMmPerS2,
        travelSpeedMmPerS: motion.travelSpeedMmPerS,
      };

/**
 * The motion that a draft says, or undefined while a figure is missing or none that a machine could have (the bounds of
 * what is stored). What was known beside it stays, save how far its times may be off: that belonged to the figures before.
 */
export const motionOf = (
  draft: MotionDraft,
  before: MotionValues | undefined,
): MotionValues | undefined => {
  const { accelerationMmPerS2, travelSpeedMmPerS } = draft;
  const corner = cornerOf(draft);
  if (corner === undefined) return undefined;
  if (!isWithin(accelerationMmPerS2, bounds.accelerationMmPerS2)) return undefined;
  if (!isWithin(travelSpeedMmPerS, bounds.speedMmPerS)) return undefined;
  const motion = { ...before, accelerationMmPerS2, corner, travelSpeedMmPerS };
  return withOptional<MotionValues, 'timeErrorPct'>(motion, 'timeErrorPct', undefined);
};

/** One figure of a jump stands for both axes. */
const cornerOf = ({ rule, deviationMm, xMmPerS, yMmPerS }: MotionDraft): CornerRule | undefined => {
  if (rule === 'junction-deviation') {
    return isWithin(deviationMm, bounds.deviationMm) ? { rule, deviationMm } : undefined;
  }
  const [x, y] = [xMmPerS ?? yMmPerS, yMmPerS ?? xMmPerS];
  return isWithin(x, bounds.jumpMmPerS) && isWithin(y, bounds.jumpMmPerS)
    ? { rule, xMmPerS: x, yMmPerS: y }
    : undefined;
};

const isWithin = (
  value: number | undefined,
  [least, most]: readonly [number, number],
): value is number => value !== undefined && value >= least && value <= most;
