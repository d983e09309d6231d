/** The classes of sheet material that are cut, made-up boards before species: "birch plywood" is plywood. */
export const materialClassIds = [
  'plywood',
  'mdf',
  'hardboard',
  'veneer',
  'acrylic',
  'cardboard',
  'card',
  'paper',
  'leather',
  'cork',
  'felt',
  'fabric',
  'bamboo',
  'softwood',
  'hardwood',
  'rubber',
] as const;
export type MaterialClassId = (typeof materialClassIds)[number];
