import { clampChroma, formatHex, modeOklch, modeRgb, useMode } from 'culori/fn';

// Only the two spaces that are used: the page carries this file too.
useMode(modeOklch);
useMode(modeRgb);

/** Hue and lightness steps of the circle; the golden angle parts neighbours in the list as far as possible. */
const goldenAngle = 137.508;
const lightnesses = [0.56, 0.68, 0.46] as const;

/**
 * A colour for each rung, in their order: spread over the circle of hues in OKLCH so that neighbours in the list are far
 * apart, lightness going up and down so that they differ without hue too. Letters always stand beside: the colour is for
 * the control program, which tells layers apart by it.
 */
export const rungColours = (count: number): readonly string[] =>
  Array.from({ length: count }, (_, i) =>
    colour(lightnesses[i % lightnesses.length] ?? NaN, 0.17, 25 + i * goldenAngle),
  );

/** Words and marks. */
export const marksColour = colour(0.3, 0.02, 250);
/** The window and the outline, at the setting that the user trusts. */
export const trustedColour = colour(0.72, 0.04, 95);

function colour(l: number, c: number, h: number): string {
  return formatHex(clampChroma({ mode: 'oklch', l, c, h: h % 360 }, 'oklch'));
}
