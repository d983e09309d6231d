import { cardsFirst } from './cardsFirst.ts';
import { gridEyeOrder } from './gridEyeOrder.ts';
import type { OrderMethod } from './referee.ts';
import { throughcutPlan } from './throughcutPlan.ts';

const all = { cards: true, severalSettings: true, lookAhead: true };

/** The plan without one of its ideas each: played only where they are asked for by name. */
const withoutSomething: readonly OrderMethod[] = [
  { name: 'no-card', weighs: { ...all, cards: false } },
  { name: 'one-setting', weighs: { ...all, severalSettings: false } },
  { name: 'no-look-ahead', weighs: { ...all, lookAhead: false } },
].map((without) => throughcutPlan('cheapest', without));

/** The ways of getting an order done that are set beside each other. */
export const orderMethods: readonly OrderMethod[] = [
  throughcutPlan('promise'),
  throughcutPlan('cheapest'),
  cardsFirst,
  gridEyeOrder,
];

/** Every way that can be asked for. */
export const allOrderMethods: readonly OrderMethod[] = [...orderMethods, ...withoutSomething];
