import type { SlowedPlace } from './slowedPlaces.ts';

/** What will be seen at a place. */
export type PlaceVerdict =
  /** Weaker than where half come out: the cut does not get through there. */
  | 'not-through'
  /** Weaker than the promise allows: it may hang there. */
  | 'may-hang'
  /** So much energy on a short stretch that the tip is charred. */
  | 'tips-burn';

/** What a place is held against. */
export interface PlaceLimits {
  readonly setMmPerS: number;
  /** The speed at which half come out at this power; undefined: nobody knows. */
  readonly halfOutMmPerS?: number;
  /** The fastest speed that holds the promise at this power. */
  readonly holdsMmPerS?: number;
  /** Energy over {@link tipMm} as a multiple of that at full speed from which tips burn. */
  readonly burnsAtRatio: number;
}

/** From this multiple of the energy at full speed tips are taken to burn. Common practice, no source. */
export const burnsAtRatio = 2.5;

/** A loss smaller than this is no weak place: the rest of the line is as weak. */
const leastLoss = 0.005;

/** The speed at full power that is as hard to cut through as the weakest window of a place, in mm/s. */
export const equivalentSpeed = (setMmPerS: number, marginChange: number): number =>
  setMmPerS * Math.exp(-marginChange);

/** What will be seen at a place; nothing, where it is as good as the straight stretches. */
export const verdictsOn = (
  { marginChange, energyRatio }: Pick<SlowedPlace, 'marginChange' | 'energyRatio'>,
  { setMmPerS, halfOutMmPerS, holdsMmPerS, burnsAtRatio: burns }: PlaceLimits,
): readonly PlaceVerdict[] => {
  const speed = equivalentSpeed(setMmPerS, marginChange);
  const weak = marginChange < -leastLoss;
  const verdicts: PlaceVerdict[] = [];
  if (weak && halfOutMmPerS !== undefined && speed > halfOutMmPerS) verdicts.push('not-through');
  else if (weak && holdsMmPerS !== undefined && speed > holdsMmPerS) verdicts.push('may-hang');
  if (energyRatio > burns) verdicts.push('tips-burn');
  return verdicts;
};
