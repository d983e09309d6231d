/** What a search asks for: every word, and every thickness. */
export interface Sought {
  /** Without case and accents. */
  readonly words: readonly string[];
  readonly thicknessesMm: readonly number[];
}

export const nothingSought: Sought = { words: [], thicknessesMm: [] };

/** Takes a search apart. A figure with its unit (`3 mm`, `3,1mm`) is a thickness; all else are words. */
export const soughtIn = (text: string): Sought => {
  const thicknessesMm: number[] = [];
  const rest = text.replace(/(\d+(?:[.,]\d+)?)\s*mm\b/gi, (_, figure: string) => {
    thicknessesMm.push(Number(figure.replace(',', '.')));
    return ' ';
  });
  const words = rest.split(/\s+/).filter((word) => word !== '');
  return { words: words.map(folded), thicknessesMm };
};

/** Without case and accents, so that `contreplaque` finds `Contreplaqué`. */
export const folded = (text: string): string =>
  text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

/** Parts of a thing by whose words it is found, as one folded text. */
export const foundBy = (parts: readonly (string | undefined)[]): string =>
  folded(parts.filter((part) => part !== undefined).join(' '));

/** Thicknesses that count as this one: within 2 %. */
export const thicknessesAbout = (mm: number): readonly [leastMm: number, mostMm: number] => [
  0.98 * mm,
  1.02 * mm,
];
