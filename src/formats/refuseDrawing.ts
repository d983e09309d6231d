import { refused, type Outcome } from '../core/problem.ts';

/** What is no file of its kind, or a broken one. */
export const refuseUnreadable = (kind: 'SVG' | 'DXF', detail: string): Outcome<never> =>
  refused('drawing-unreadable', { kind, detail });
