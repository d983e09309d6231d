/** The sides of a card that are photographed. */
export const photoSides = ['front', 'back'] as const;
export type PhotoSide = (typeof photoSides)[number];
