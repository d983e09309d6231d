import { compareConditions, type Comparison } from '../../core/compare/compareConditions.ts';
import type { TwoConditions } from '../../core/compare/twoConditions.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';

/**
 * Two conditions beside each other; nothing is stored. What is to be said of the material stands before all other remarks.
 * Refuses: what `acceptMaterial` and `compareConditions` refuse.
 */
export const compareTwo = (two: TwoConditions): Outcome<Comparison> => {
  const accepted = acceptMaterial(two.stock);
  if (!accepted.ok) return accepted;
  const compared = compareConditions(two);
  return compared.ok
    ? done({ ...compared.value, remarks: [...accepted.value, ...compared.value.remarks] })
    : compared;
};
