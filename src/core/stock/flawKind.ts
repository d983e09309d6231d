import type { MaterialClassId } from './materialClass.ts';
import { findMaterial } from './materials.ts';

/** What of a sheet of this kind may never come out, however slowly it is cut. */
export type FlawKind = 'pocket-or-knot' | 'knot' | 'flaw';

/** Layers of veneer glued onto each other. Common practice, no source. */
const glued: readonly MaterialClassId[] = ['plywood'];
const grown: readonly MaterialClassId[] = ['softwood', 'hardwood', 'veneer', 'bamboo'];

/** Glue pockets are plywood's alone, and knots what has grown has: of anything else, and of what no list knows, a flaw. */
export const flawKindOf = (material: string): FlawKind => {
  const id = findMaterial(material)?.id;
  if (id === undefined) return 'flaw';
  return glued.includes(id) ? 'pocket-or-knot' : grown.includes(id) ? 'knot' : 'flaw';
};
