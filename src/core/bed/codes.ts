/** Why the four corners of a bed cannot be drawn. */
export const bedCodes = ['bed-too-small', 'bed-wish-out-of-range', 'bed-cell-below-gap'] as const;

export type BedCode = (typeof bedCodes)[number];
