import { findMaterial } from './materials.ts';

/** How far a sheet may be off its label by the standard of its kind. */
export interface LabelTolerance {
  readonly leastMm: number;
  readonly mostMm: number;
  /** The standard, and how well it is known here. */
  readonly source: string;
}

/**
 * What a standard allows a sheet of this nominal thickness to measure; nothing for materials without one here. Taken
 * for the wider of two kinds where the text does not say which (cast acrylic, sanded plywood).
 */
export const labelTolerance = (material: string, nominalMm: number): LabelTolerance | undefined => {
  switch (findMaterial(material)?.id) {
    case 'acrylic': {
      const off = 0.4 + 0.1 * nominalMm; // as quoted on two public pages; the standard's text was not seen
      return {
        leastMm: nominalMm - off,
        mostMm: nominalMm + off,
        source: 'ISO 7823-1, cast sheet, as commonly quoted',
      };
    }
    case 'plywood': // the form is printed for GB/T 9846; that EN 315 says the same is from memory, unconfirmed
      return {
        leastMm: nominalMm - (0.4 + 0.03 * nominalMm),
        mostMm: nominalMm + (0.2 + 0.03 * nominalMm),
        source: 'EN 315, sanded, as commonly quoted',
      };
    case 'mdf': {
      const off = nominalMm <= 19 ? 0.2 : 0.3; // EN 622-5, from memory; a maker's sheet measured by EN 324-1 agrees
      return {
        leastMm: nominalMm - off,
        mostMm: nominalMm + off,
        source: 'EN 622-5, as commonly quoted',
      };
    }
    default:
      return undefined;
  }
};
