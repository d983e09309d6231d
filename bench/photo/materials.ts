import type { SeededRandom } from '../../src/num/seededRandom.ts';

/** Red, green, blue in linear light, 0–1. */
export type Light = readonly [number, number, number];

/** How a sheet looks in a photograph. */
export interface Look {
  readonly name: string;
  readonly colour: Light;
  /** What burnt edges and grooves turn to. */
  readonly groove: Light;
  /** Strength of lines along the grain, as a share of the colour. */
  readonly grain: number;
  /** What goes through it, as a share; 0 for what nobody sees through. */
  readonly clear: number;
  /** What it throws back of the room, as a share. */
  readonly mirrors: number;
}

/** Colours from memory of such sheets under white light; no source. */
export const looks: readonly Look[] = [
  look('birch plywood', [0.62, 0.45, 0.26], { grain: 0.08, groove: [0.06, 0.035, 0.02] }),
  look('walnut plywood', [0.16, 0.085, 0.05], { grain: 0.16, groove: [0.02, 0.013, 0.01] }),
  look('fibreboard', [0.36, 0.23, 0.12], { grain: 0.03, groove: [0.035, 0.02, 0.012] }),
  look('white board', [0.8, 0.79, 0.76], { grain: 0.01, groove: [0.12, 0.08, 0.05] }),
  look('black board', [0.02, 0.02, 0.022], { grain: 0.02, groove: [0.07, 0.065, 0.06] }),
  look('red acrylic', [0.5, 0.03, 0.03], { mirrors: 0.04, groove: [0.62, 0.3, 0.28] }),
  look('clear acrylic', [0.7, 0.72, 0.72], {
    clear: 0.84,
    mirrors: 0.05,
    groove: [0.75, 0.76, 0.76],
  }),
  look('mirrored acrylic', [0.55, 0.56, 0.57], { mirrors: 0.75, groove: [0.2, 0.2, 0.2] }),
  look('opal acrylic', [0.78, 0.78, 0.77], { mirrors: 0.04, groove: [0.5, 0.5, 0.5] }),
];

function look(
  name: string,
  colour: Light,
  {
    groove,
    grain = 0,
    clear = 0,
    mirrors = 0,
  }: Pick<Look, 'groove'> & Partial<Pick<Look, 'grain' | 'clear' | 'mirrors'>>,
): Look {
  return { name, colour, groove, grain, clear, mirrors };
}

/** Sheets to lay a card on. */
const backings: readonly Light[] = [
  [0.82, 0.82, 0.8],
  [0.05, 0.16, 0.42],
  [0.03, 0.3, 0.1],
  [0.6, 0.04, 0.25],
  [0.02, 0.02, 0.02],
  [0.85, 0.55, 0.03],
];

/** One that contrasts with the sheet, as the person is asked for. */
export const contrastingBacking = ({ colour }: Look, random: SeededRandom): Light => {
  const apart = (a: Light): number =>
    Math.hypot(...a.map((value, k) => Math.cbrt(value) - Math.cbrt(colour[k] ?? NaN)));
  const good = backings.filter((backing) => apart(backing) > 0.3);
  return good[random.integer(good.length)] ?? [0.02, 0.02, 0.02];
};
