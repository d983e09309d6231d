import { refused, type Outcome, type Problem } from '../core/problem.ts';
import type { DrawingCode } from './drawingCodes.ts';

/** A refusal by a code of this layer's list, so that a slip in a code does not compile. */
export const refuseDrawing = (code: DrawingCode, params?: Problem['params']): Outcome<never> =>
  refused(code, params);

/** What is no file of its kind, or a broken one. */
export const refuseUnreadable = (kind: 'SVG' | 'DXF', detail: string): Outcome<never> =>
  refuseDrawing('drawing-unreadable', { kind, detail });
