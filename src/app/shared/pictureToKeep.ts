import { done, type Outcome } from '../../core/problem.ts';
import type { PictureKept, Pictures } from '../ports/pictures.ts';
import type { Ports } from '../ports/ports.ts';

/** About so much is a sharp picture of 2,000 pixels. */
const mostBytes = 1_500_000;

/**
 * A photograph as it may be kept: upright, no larger than reading needs, and with nothing in it but the picture, so not where
 * and when it was taken. `name`: for the refusals, which are what is no photograph, too large, too small or broken.
 */
export const pictureToKeep = async (
  { clock, pictures }: Pick<Ports, 'clock'> & { readonly pictures: Pictures },
  bytes: Uint8Array,
  name: string,
): Promise<Outcome<{ readonly kept: PictureKept; readonly jpeg: Uint8Array }>> => {
  const decoded = await pictures.decode(bytes, name);
  if (!decoded.ok) return decoded;
  const jpeg = await pictures.toJpeg(decoded.value, mostBytes);
  const { widthPx, heightPx } = decoded.value;
  return done({ kept: { keptAt: clock.now(), widthPx, heightPx }, jpeg });
};
