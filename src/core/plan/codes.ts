/** Why a plan's next act is what it is. */
export const planCodes = [
  'plan-card-first',
  'plan-first-sheet',
  'plan-faster',
  'plan-slower',
  'plan-stay',
  'plan-try-faster',
  'plan-nothing-keeps',
  'plan-done',
] as const;

export type PlanCode = (typeof planCodes)[number];
