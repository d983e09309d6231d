import { deepestPerCap, highestPerCap, type Lettering } from './letters.ts';

/** The words beside a cell: small, narrow, readable at arm's length. */
export const wordLettering: Lettering = { capMm: 2.2, narrow: 0.8 };
/** The card's code, to be read across the workshop and in a photo. */
export const codeLettering: Lettering = { capMm: 6, narrow: 0.85 };
/** What the write-in field asks for, and what the window and the patch are called. */
export const hintLettering: Lettering = { capMm: 1.6, narrow: 0.8 };

/** From one base line to the next. */
export const linePitchMm = (lettering: Lettering): number => lettering.capMm * 1.65;
export const riseMm = (lettering: Lettering): number => lettering.capMm * (1 + highestPerCap);
export const depthMm = (lettering: Lettering): number => lettering.capMm * deepestPerCap;
