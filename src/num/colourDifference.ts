import type { Triple } from './colour.ts';

const radians = Math.PI / 180;
const degrees = (angle: number): number => (angle / radians + 360) % 360;

/** A saturation term that occurs twice: √(c⁷/(c⁷ + 25⁷)). */
const crowding = (chroma: number): number => Math.sqrt(chroma ** 7 / (chroma ** 7 + 25 ** 7));

/**
 * How different two CIELAB colours look: CIEDE2000 with all weights 1, in the steps and with the hue conventions of
 * Sharma, Wu & Dalal 2005. About 1 is just seen side by side.
 */
export const colourDifference = ([l1, a1, b1]: Triple, [l2, a2, b2]: Triple): number => {
  const meanOfChromas = (Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2;
  const stretch = 1 + (1 - crowding(meanOfChromas)) / 2;
  const [x1, x2] = [stretch * a1, stretch * a2];
  const [c1, c2] = [Math.hypot(x1, b1), Math.hypot(x2, b2)];
  const [h1, h2] = [hueOf(x1, b1), hueOf(x2, b2)];
  const grey = c1 * c2 === 0;

  const turn = grey ? 0 : ((h2 - h1 + 540) % 360) - 180;
  // Opposite hues: the turn is taken as the sign of the plain difference says.
  const signedTurn = Math.abs(turn) === 180 ? h2 - h1 : turn;
  const dL = l2 - l1;
  const dC = c2 - c1;
  const dH = 2 * Math.sqrt(c1 * c2) * Math.sin((signedTurn * radians) / 2);

  const meanL = (l1 + l2) / 2;
  const meanC = (c1 + c2) / 2;
  const meanH = grey ? h1 + h2 : meanHue(h1, h2);
  const wave = (multiple: number, offset: number): number =>
    Math.cos((multiple * meanH + offset) * radians);
  const t = 1 - 0.17 * wave(1, -30) + 0.24 * wave(2, 0) + 0.32 * wave(3, 6) - 0.2 * wave(4, -63);
  const fromMiddle = (meanL - 50) ** 2;
  const sL = 1 + (0.015 * fromMiddle) / Math.sqrt(20 + fromMiddle);
  const sC = 1 + 0.045 * meanC;
  const sH = 1 + 0.015 * meanC * t;
  const rotation = 30 * Math.exp(-(((meanH - 275) / 25) ** 2));
  const rT = -2 * crowding(meanC) * Math.sin(2 * rotation * radians);
  const [l, c, h] = [dL / sL, dC / sC, dH / sH];
  return Math.sqrt(l * l + c * c + h * h + rT * c * h);
};

const hueOf = (a: number, b: number): number =>
  a === 0 && b === 0 ? 0 : degrees(Math.atan2(b, a));

/** Halfway between two hues, the short way round; opposite ones by their plain mean. */
const meanHue = (h1: number, h2: number): number => {
  const sum = h1 + h2;
  if (Math.abs(h1 - h2) <= 180) return sum / 2;
  return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
};
