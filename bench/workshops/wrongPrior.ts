import { workshopWith } from './make.ts';

/** The expected changeover is wrong threefold, either way. */
export const { name, openWorkshop, flawRate } = workshopWith(
  'wrong-prior',
  ({ v50MmPerS, typicalPowerPct }) => ({
    v50MmPerS: v50MmPerS * (typicalPowerPct % 2 === 0 ? 3 : 1 / 3),
  }),
);
