import { deliveredOrSetting } from '../tube/deliveredPower.ts';
import type { Machine } from '../machine/machine.ts';
import type { Card } from './card.ts';
import type { BelievedChangeover } from './cardRequest.ts';

/**
 * The changeover that a card was designed for, at any power: along the delivered power as far as the machine tells, else along
 * the setting. How well it was known is not in the card: its `lnSd` is 0.
 */
export const believedLaw = (
  { powerPct: at, v50MmPerS, powerExponent = 1 }: NonNullable<Card['believed']>,
  machine: Machine,
): BelievedChangeover => {
  const delivered = deliveredOrSetting(machine);
  const there = delivered(at);
  return (powerPct) => ({
    v50MmPerS: v50MmPerS * (delivered(powerPct) / there) ** powerExponent,
    lnSd: 0,
  });
};
