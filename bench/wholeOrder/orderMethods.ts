import { cardsFirst } from './cardsFirst.ts';
import { gridEyeOrder } from './gridEyeOrder.ts';
import type { OrderMethod } from './referee.ts';
import { throughcutPlan } from './throughcutPlan.ts';

/** The ways of getting an order done that are set beside each other. */
export const orderMethods: readonly OrderMethod[] = [
  throughcutPlan('promise'),
  throughcutPlan('cheapest'),
  cardsFirst,
  gridEyeOrder,
];
