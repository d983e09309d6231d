import type { CurveChange } from './compareMeterings.ts';

/** Do parts come out as they did? What the person at the machine says. */
export type CutsNow = 'as-before' | 'weaker' | 'unsaid';

/** A place where a fault may sit; each has its sentence in the words layer. */
export type Suspect = 'meter' | 'wiring' | 'supply' | 'controller' | LightSuspect;

/** Between the tube's current and the cut: what takes light away, cheapest to look at first. Common practice, no source. */
export const lightSuspects = ['lens', 'water', 'focus', 'air', 'mirrors', 'tube'] as const;
export type LightSuspect = (typeof lightSuspects)[number];

/** What two meterings together with the cuts point at. */
export interface WhereToLook {
  /**
   * `current`: what the tube is given has changed. `light`: it is given the same and cuts less. `nothing`: neither.
   * `cuts-first`: the curve is as it was; whether the cuts are, nobody has said. `read-again`: the curve moved and the
   * cuts did not, which asks for another look at the meter first.
   */
  readonly at: 'current' | 'light' | 'nothing' | 'cuts-first' | 'read-again';
  /** Cheapest first. */
  readonly suspects: readonly Suspect[];
}

/**
 * The supply sets the current: an old tube draws the same and gives less light. So a curve that moved points at supply,
 * wiring or controller, and one that did not, with weaker cuts, at optics, focus, water, air or the tube. Common practice, no
 * source.
 */
export const whereToLook = ({ how }: Pick<CurveChange, 'how'>, cuts: CutsNow): WhereToLook => {
  if (how === 'same') {
    if (cuts === 'weaker') return { at: 'light', suspects: lightSuspects };
    return { at: cuts === 'unsaid' ? 'cuts-first' : 'nothing', suspects: [] };
  }
  if (cuts === 'as-before')
    return { at: 'read-again', suspects: ['meter', 'controller', 'wiring', 'supply'] };
  return { at: 'current', suspects: suspectsOf[how] };
};

/** A threshold that rose is the one sign of the current that the tube itself may give. */
const suspectsOf: Readonly<Record<Exclude<CurveChange['how'], 'same'>, readonly Suspect[]>> = {
  lower: ['controller', 'wiring', 'supply'],
  higher: ['controller', 'supply', 'wiring'],
  bent: ['controller', 'supply', 'wiring'],
  'fires-later': ['water', 'wiring', 'supply', 'tube'],
  'fires-sooner': ['controller', 'supply', 'wiring'],
};
