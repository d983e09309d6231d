import type { Setting } from '../machine/setting.ts';

/** Equal but for the speed. A person types whole per cents. */
const isAlike = (one: Setting, other: Setting): boolean =>
  Math.abs(one.powerPct - other.powerPct) <= 0.5 && one.passes === other.passes;

/** An answer names tenths. */
export const isSameSpeed = (one: number, other: number): boolean => Math.abs(one - other) < 0.05;

/** The orders that were cut with a setting itself. */
export const ordersWith = <O extends { readonly setting: Setting }>(
  setting: Setting,
  orders: readonly O[],
): readonly O[] =>
  orders.filter(
    (order) =>
      isAlike(order.setting, setting) &&
      isSameSpeed(order.setting.speedMmPerS, setting.speedMmPerS),
  );
