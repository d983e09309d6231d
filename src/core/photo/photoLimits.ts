/** What of a photograph is read at all, whoever decodes it. */
export const photoLimits = {
  megapixels: 60,
  leastPx: 200,
  /** No photograph of a phone has more bytes. */
  bytes: 60e6,
  /** Twice as fine as the finest cut needs: larger pictures are made smaller. */
  longestPx: 2000,
} as const;

/** The size at which a picture is read: as it is, or made smaller to fit. */
export const sizeToRead = (
  widthPx: number,
  heightPx: number,
): { readonly widthPx: number; readonly heightPx: number } => {
  const shrink = Math.max(1, Math.max(widthPx, heightPx) / photoLimits.longestPx);
  return {
    widthPx: Math.max(1, Math.round(widthPx / shrink)),
    heightPx: Math.max(1, Math.round(heightPx / shrink)),
  };
};
