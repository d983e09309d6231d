/** What a drawing itself is remarked upon for. */
export const drawingRemarkCodes = [
  'proof-open-outline',
  'proof-in-pieces',
  'proof-cut-twice',
  'proof-outside-first',
  'proof-cuts-close',
] as const;

/** Why something is not told of a drawing, or with what care. */
export const proofCodes = [
  ...drawingRemarkCodes,
  'proof-nothing-to-cut',
  'proof-no-setting',
  'proof-overdrives',
  'proof-power-not-known',
  'proof-faster-than-any-out',
  'proof-below-start-speed',
  'proof-too-many-to-compare',
  'proof-too-much-to-plan',
] as const;

export type ProofCode = (typeof proofCodes)[number];
