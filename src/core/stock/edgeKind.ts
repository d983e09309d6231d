import type { EdgeKind } from '../reading/edge.ts';
import type { MaterialClassId } from './materialClass.ts';
import { findMaterial } from './materials.ts';
import { woods } from './woods.ts';

/** What browns at its edge as wood does. Common practice, no source. */
const browns: readonly MaterialClassId[] = [...woods, 'cardboard', 'card', 'paper', 'leather'];

/** By which words the edges of a material are graded; undefined: by none, of what no list knows too. */
export const edgeKindOf = (material: string): EdgeKind | undefined => {
  const id = findMaterial(material)?.id;
  if (id === undefined) return undefined;
  return id === 'acrylic' ? 'acrylic' : browns.includes(id) ? 'wood' : undefined;
};
