/**
 * out: falls, or comes with a light finger push. hangs: through nearly everywhere, needs a knife. stays: not through.
 * Found by one standard act: lift the card level, one knuckle tap, then one light push; look at the back when one hangs.
 */
export const grades = ['out', 'hangs', 'stays'] as const;
export type Grade = (typeof grades)[number];

/**
 * Why a cell says nothing about its setting. A glue pocket or a knot counts as one flaw of the material and says nothing
 * of the margin; the other reasons count for nothing.
 */
export const spoiltReasons = [
  'glue-pocket',
  'knot',
  'clip',
  'lifted',
  'slat',
  'welded-back',
] as const;
export type SpoiltReason = (typeof spoiltReasons)[number];

/** Reasons that are flaws of the material. */
export const isFlaw = (reason: SpoiltReason): boolean =>
  reason === 'glue-pocket' || reason === 'knot';
