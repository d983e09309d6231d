/** A photograph, upright: rows from the top, three bytes a pixel (red, green, blue in sRGB). */
export interface Picture {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly rgb: Uint8Array;
}
