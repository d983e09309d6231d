/** Qualities of a JPEG that are tried, in per cent, the best first. */
const qualitiesPct = [85, 75, 60, 40, 20] as const;

/** A picture in the best quality that stays within so many bytes, or in the poorest where none does. */
export const jpegWithin = async (
  mostBytes: number,
  encode: (qualityPct: number) => Promise<Uint8Array>,
): Promise<Uint8Array> => {
  let last: Uint8Array = new Uint8Array(0);
  for (const qualityPct of qualitiesPct) {
    last = await encode(qualityPct);
    if (last.length <= mostBytes) break;
  }
  return last;
};
