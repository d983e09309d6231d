import type { PlaceVerdict } from './placeVerdict.ts';
import type { SlowedPlace } from './slowedPlaces.ts';

/** A slowed place of a drawing, with the line that it is on and what will be seen there. */
export interface FoundPlace extends SlowedPlace {
  readonly line: number;
  readonly verdicts: readonly PlaceVerdict[];
}

/** Places that will look alike. */
export interface PlaceGroup {
  /** As in the picture, from 1. */
  readonly number: number;
  readonly verdict: PlaceVerdict;
  readonly kind: SlowedPlace['kind'];
  readonly count: number;
  /** The worst of them: margin change in ln speed, energy as a multiple of that at full speed, least speed. */
  readonly marginChange: number;
  readonly energyRatio: number;
  readonly leastMmPerS: number;
  readonly powerShare: number;
}

/** Groups that are told one by one. */
const mostGroups = 12;

const order: readonly PlaceVerdict[] = ['not-through', 'may-hang', 'tips-burn'];

/** Margins within 0.04 in ln speed, or energies within half the energy at full speed, look alike. */
const changeStep = 0.04;
const ratioStep = 0.5;

export const groupKey = (place: FoundPlace, verdict: PlaceVerdict): string =>
  [
    verdict,
    place.kind,
    verdict === 'tips-burn'
      ? Math.floor(place.energyRatio / ratioStep)
      : Math.floor(place.marginChange / changeStep),
  ].join(' ');

/** Numbers the places with a verdict in groups that look alike, the worst first. O(places). */
export const groupPlaces = (
  places: readonly FoundPlace[],
): {
  readonly groups: readonly (PlaceGroup & { readonly key: string })[];
  readonly leftOut: number;
} => {
  const groups = new Map<string, Omit<PlaceGroup, 'number'> & { readonly key: string }>();
  for (const place of places) {
    for (const verdict of place.verdicts) {
      const key = groupKey(place, verdict);
      const known = groups.get(key);
      groups.set(key, {
        key,
        verdict,
        kind: place.kind,
        count: (known?.count ?? 0) + 1,
        marginChange: Math.min(place.marginChange, known?.marginChange ?? Infinity),
        energyRatio: Math.max(place.energyRatio, known?.energyRatio ?? 0),
        leastMmPerS: Math.min(place.leastMmPerS, known?.leastMmPerS ?? Infinity),
        powerShare: Math.min(place.weakest.powerShare, known?.powerShare ?? 1),
      });
    }
  }
  const sorted = [...groups.values()].sort(
    (a, b) =>
      order.indexOf(a.verdict) - order.indexOf(b.verdict) ||
      (a.verdict === 'tips-burn' ? b.energyRatio - a.energyRatio : a.marginChange - b.marginChange),
  );
  return {
    groups: sorted.slice(0, mostGroups).map((group, i) => ({ ...group, number: i + 1 })),
    leftOut: Math.max(0, sorted.length - mostGroups),
  };
};
