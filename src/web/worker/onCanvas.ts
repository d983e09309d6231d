import { sizeToRead } from '../../core/photo/photoLimits.ts';

export interface Drawn {
  readonly canvas: OffscreenCanvas;
  readonly context: OffscreenCanvasRenderingContext2D;
}

/** A photograph drawn upright, no larger than reading needs, on grey where it lets light through; undefined where the browser cannot open it. */
export const drawnUpright = async (photo: Blob): Promise<Drawn | undefined> => {
  const decoded = await bitmapOf(photo);
  if (decoded === undefined) return undefined;
  const { widthPx, heightPx } = sizeToRead(decoded.width, decoded.height);
  const canvas = new OffscreenCanvas(widthPx, heightPx);
  const context = canvas.getContext('2d', { alpha: false, willReadFrequently: true });
  if (context === null) throw new Error('this browser draws on no canvas');
  context.fillStyle = '#808080';
  context.fillRect(0, 0, widthPx, heightPx);
  context.imageSmoothingQuality = 'high';
  context.drawImage(decoded, 0, 0, widthPx, heightPx);
  decoded.close();
  return { canvas, context };
};

const bitmapOf = async (photo: Blob): Promise<ImageBitmap | undefined> => {
  try {
    return await createImageBitmap(photo, { imageOrientation: 'from-image' });
  } catch {
    return undefined;
  }
};
