import type { BelievedChangeover } from '../card/cardRequest.ts';
import type { Machine } from '../machine/machine.ts';
import { believedChangeover } from './believedChangeover.ts';

/** A strip for a focus ramp is taken to be this thick where nobody says, mm. Common practice, no source. */
export const usualStripMm = 3;

/** Where a strip of a material is believed to be cut through: a line on it must stay well below that. */
export const stripChangeover = (
  {
    material,
    thicknessMm = usualStripMm,
  }: { readonly material: string; readonly thicknessMm?: number },
  machine: Machine,
): BelievedChangeover =>
  believedChangeover({ stock: { material, thicknessMm }, machine }, undefined);
