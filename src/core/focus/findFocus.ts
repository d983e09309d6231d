import type { Outcome } from '../problem.ts';
import { focusFromFades } from './focusFromFades.ts';
import { focusFromWidths } from './focusFromWidths.ts';
import { checkedRamp } from './focusRamp.ts';
import type { FocusEstimate, UnkeptFocusTest } from './focusTest.ts';

/**
 * Where the focus is, from what was read off a ramp: by fading ends or by widths. Refuses a ramp that may not be used and
 * readings that do not tell, and says when the ramp missed the focus.
 */
export const findFocus = ({ ramp, readings }: UnkeptFocusTest): Outcome<FocusEstimate> => {
  const checked = checkedRamp(ramp);
  if (!checked.ok) return checked;
  return readings.kind === 'fades'
    ? focusFromFades(ramp, readings.lines)
    : focusFromWidths(ramp, readings.widths);
};
