import { findMaterial } from './materials.ts';
import { woods } from './woods.ts';

/** Whether a cut in this may glow on after the beam has passed; true also of what no list knows. */
export const glowsOn = (material: string): boolean => {
  const found = findMaterial(material);
  return found === undefined || woods.includes(found.id);
};
