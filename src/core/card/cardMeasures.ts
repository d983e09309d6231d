/** Between a shape and its words. */
export const wordsGapMm = 1.3;
/** From the card's edge to a notch, and the length of a notch's legs. */
export const notchInsetMm = 2;
export const notchLegMm = 5;
/** The doubled notch has a second corner this much further in. */
export const notchDoubleMm = 1.2;
