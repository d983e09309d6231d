import type { Setting } from '../machine/setting.ts';
import type { TestShape } from './testShapes.ts';

/** One distinct setting on a card, lettered A, B, C… in the order of cutting. */
export interface Rung {
  readonly letter: string;
  readonly setting: Setting;
}

/** One shape on the card, cut at one rung's setting. A cell's words are generated from that setting, never stored. */
export interface Cell {
  /** Rung letter and number within the rung, such as `B2`. Unique on the card. */
  readonly id: string;
  readonly rung: string;
  /** Centre of the cell, in mm from the card's lower left corner, y upwards. */
  readonly xMm: number;
  readonly yMm: number;
}

export type { TestShape } from './testShapes.ts';

/**
 * A piece of the sheet cut as a test. The master from which every file, picture and list is drawn.
 * Cells stand in the order of cutting.
 */
export interface Card {
  readonly version: 1;
  /** Four characters, cut into the card so that it can be found again. */
  readonly code: string;
  readonly origin: 'designed' | 'described';
  readonly rungs: readonly Rung[];
  readonly cells: readonly Cell[];
  readonly shape: TestShape;
  readonly sizeMm: number;
  /** Length of cut of one cell. */
  readonly shapeLengthMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** How words and marks are drawn: the user's own scoring setting. */
  readonly scoring?: Setting;
  /** A slow setting that the user trusts: for the outline and for the window to poke out. */
  readonly trusted?: Setting;
  /** Whether the outline is cut (last), or the card is read in the corner of the sheet. */
  readonly outline: 'last' | 'none';
  /** Which corner notch is doubled, so that a photo or a turned card cannot be misread. */
  readonly doubledNotch: 'lower-left' | 'lower-right' | 'upper-left' | 'upper-right';
  /** Where the code, the write-in field, the window and the patch left whole lie; mm, lower left corner and size. */
  readonly places: {
    readonly code?: Place;
    readonly writeIn?: Place;
    readonly window?: Place;
    readonly whole?: Place;
  };
  /** Where half the shapes were believed to come out when the card was designed. */
  readonly believed?: {
    readonly powerPct: number;
    readonly v50MmPerS: number;
    /** How that speed rises with the delivered power; absent: in proportion. */
    readonly powerExponent?: number;
  };
  /** A person chose settings above the tube's rated current. */
  readonly overdrive?: true;
  /** From the invented example: nobody cut it. */
  readonly isExample?: true;
  /** `free`: the cells of the rungs are cut mixed, which only G-code can carry. Absent: rung by rung. */
  readonly order?: 'free';
  readonly batch?: string;
  readonly sheet?: string;
  readonly thicknessMm?: number;
  /** In a person's own words. It is not cut, and may change when all else of a card may not. */
  readonly note?: string;
}

export interface Place {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}
