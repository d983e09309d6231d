export type Triple = readonly [number, number, number];

/** How linear sRGB becomes CIE XYZ, and the white that goes with it. */
export interface RgbSpace {
  readonly toXyz: readonly [Triple, Triple, Triple];
  readonly white: Triple;
}

/** The four-decimal matrix printed in IEC 61966-2-1, and D65 to five digits. */
export const srgbAsPrinted: RgbSpace = {
  toXyz: [
    [0.4124, 0.3576, 0.1805],
    [0.2126, 0.7152, 0.0722],
    [0.0193, 0.1192, 0.9505],
  ],
  white: [0.95047, 1, 1.08883],
};

/** From an 8-bit sRGB component to linear light, 0–1: IEC 61966-2-1. */
export const linearFromSrgb8 = (component: number): number => {
  const c = component / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
};

/** The matrix that follows from the primaries’ and the white’s chromaticities (SMPTE RP 177). */
export const rgbSpaceFrom = (
  primaries: readonly [
    red: readonly [number, number],
    green: readonly [number, number],
    blue: readonly [number, number],
  ],
  [wx, wy]: readonly [number, number],
): RgbSpace => {
  const full = (x: number, y: number): Triple => [x / y, 1, (1 - x - y) / y];
  const [[rx, ry], [gx, gy], [bx, by]] = primaries;
  const [r, g, b] = [full(rx, ry), full(gx, gy), full(bx, by)];
  const white = full(wx, wy);
  // How much of each primary makes the white: Cramer’s rule.
  const whole = triple(r, g, b);
  const shares: Triple = [
    triple(white, g, b) / whole,
    triple(r, white, b) / whole,
    triple(r, g, white) / whole,
  ];
  const line = (k: 0 | 1 | 2): Triple => [shares[0] * r[k], shares[1] * g[k], shares[2] * b[k]];
  return { toXyz: [line(0), line(1), line(2)], white };
};

/** The determinant of three columns. */
const triple = ([a, b, c]: Triple, [d, e, f]: Triple, [g, h, i]: Triple): number =>
  a * (e * i - f * h) - d * (b * i - c * h) + g * (b * f - c * e);

/** sRGB by its definition: the chromaticities of ITU-R BT.709 and D65 (0.3127, 0.3290). */
export const srgbExact: RgbSpace = rgbSpaceFrom(
  [
    [0.64, 0.33],
    [0.3, 0.6],
    [0.15, 0.06],
  ],
  [0.3127, 0.329],
);

/** CIE XYZ, Y of white 1, from 8-bit sRGB. */
export const xyzFromSrgb8 = (rgb: Triple, { toXyz }: RgbSpace): Triple => {
  const [r, g, b] = rgb.map(linearFromSrgb8);
  const line = ([x, y, z]: Triple): number => x * (r ?? NaN) + y * (g ?? NaN) + z * (b ?? NaN);
  return [line(toXyz[0]), line(toXyz[1]), line(toXyz[2])];
};

/** CIELAB under a given white: CIE 15, with the exact (6/29)³ and (29/6)²/3. */
export const labFromXyz = (xyz: Triple, white: Triple): Triple => {
  const part = (k: 0 | 1 | 2): number => {
    const t = xyz[k] / white[k];
    return t > (6 / 29) ** 3 ? Math.cbrt(t) : (t * (29 / 6) ** 2) / 3 + 4 / 29;
  };
  const [fx, fy, fz] = [part(0), part(1), part(2)];
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
};

/** Lightness, green to red, blue to yellow of an 8-bit sRGB colour. */
export const labFromSrgb8 = (rgb: Triple, space: RgbSpace = srgbExact): Triple =>
  labFromXyz(xyzFromSrgb8(rgb, space), space.white);
