import { z } from 'zod';

import {
  homographyNearest,
  homographyThrough,
  project,
  type HomographyOutcome,
  type Point,
} from '../../num/homography.ts';
import { byKind } from './byKind.ts';
import type { Tolerance } from './compare.ts';

const point = z.tuple([z.number(), z.number()]);

const shown = (
  found: HomographyOutcome & { readonly ok: true },
  probe: readonly Point[],
): object => ({
  H: found.matrix,
  projected: probe.map((place) => project(found.matrix, place)),
  reprojectionRms: found.rms,
});

const pairs = z
  .object({ source: z.array(point), target: z.array(point), probe: z.array(point).default([]) })
  .refine(({ source, target }) => source.length === target.length, 'as many targets as sources')
  .transform(({ source, target, probe }) => {
    const given = source.map((place, i) => ({ source: place, target: target[i] ?? place }));
    const through = homographyThrough(given);
    if (!through.ok) return { refuse: true, why: through.reason };
    const nearest = homographyNearest(given);
    return { ...shown(through, probe), ...(nearest.ok && { geometric: shown(nearest, probe) }) };
  });

/** Plane-to-plane maps. */
export const t14 = byKind({
  'exact-4': pairs,
  'exact-many': pairs,
  noisy: pairs,
  degenerate: pairs,
});

const sizes = z.looseObject({ projectedAbs: z.number(), HRelative: z.number() });

/**
 * The file’s tolerance of H is relative, element by element; where an element is 0 but for rounding it is held to the
 * size of the largest instead.
 */
export const t14Tolerance = (
  expected: unknown,
  own: Tolerance | undefined,
): Tolerance | undefined => {
  const given = sizes.safeParse(own);
  const matrix = z.looseObject({ H: z.array(z.array(z.number())) }).safeParse(expected);
  if (!given.success || !matrix.success) return undefined;
  const { projectedAbs, HRelative } = given.data;
  const largest = Math.max(...matrix.data.H.flat().map(Math.abs));
  return {
    absolute: { projected: projectedAbs, reprojectionRms: projectedAbs, H: 1e-12 * largest },
    relative: { H: HRelative },
  };
};
