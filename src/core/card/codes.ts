import type { Problem } from '../problem.ts';

/** Why a card cannot be designed, or what is to be said of one that was. */
export const cardCodes = [
  'card-request-out-of-range',
  'card-corners-need-corners',
  'card-corners-below-start',
  'card-too-many-entries',
  'card-cell-below-bed-gap',
  'card-bigger-than-sheet',
  'card-power-above-machine',
  'card-tube-readings-odd',
  'card-nothing-to-vary',
  'card-rung-sped-up-to-ceiling',
  'card-rung-rounded',
  'card-machine-too-strong',
  'card-machine-strong-for-it',
  'card-power-lowered',
  'card-rung-overdrives',
  'card-circle-flatters',
  'card-strength-unsaid',
  'card-scoring-guessed',
  'card-no-trusted-setting',
  'card-fewer-rungs-than-asked',
  'card-order-only-in-gcode',
] as const;

export type CardCode = (typeof cardCodes)[number];

/** A problem with one of these codes, so that a slip in a code does not compile. */
export type CardProblem = Problem & { readonly code: CardCode };
