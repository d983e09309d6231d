import type { MaterialClassId } from './materialClass.ts';
import { findMaterial } from './materials.ts';

/** What glows on inside a slow cut, as wood does. Common practice, no source. */
const woods: readonly MaterialClassId[] = [
  'plywood',
  'mdf',
  'hardboard',
  'veneer',
  'bamboo',
  'softwood',
  'hardwood',
  'cork',
];

/** Whether a cut in this may glow on after the beam has passed; true also of what no list knows. */
export const glowsOn = (material: string): boolean => {
  const found = findMaterial(material);
  return found === undefined || woods.includes(found.id);
};
