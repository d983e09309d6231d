import type { Clock } from '../app/ports/ports.ts';

/** This computer's clock. */
export const systemClock: Clock = { now: () => new Date().toISOString() };
