import type { MaterialClassId } from './materialClass.ts';

/** Wood and what is made of it: it browns at a cut's edge, and glows on inside a slow one. Common practice, no source. */
export const woods: readonly MaterialClassId[] = [
  'plywood',
  'mdf',
  'hardboard',
  'veneer',
  'bamboo',
  'softwood',
  'hardwood',
  'cork',
];
