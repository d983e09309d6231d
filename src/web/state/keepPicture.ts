import { problemOf } from '../../core/problem.ts';
import type { CallOutcome } from './call.ts';
import { drawnUpright } from '../worker/onCanvas.ts';

/** A picture over a slow line takes its time. */
export const pictureTimeLimitMs = 60_000;

/** Draws a photograph anew and sends it: what leaves this device is the picture alone, not where it was taken. */
export const keepPicture = async <T>(
  photo: Blob,
  name: string,
  send: (file: Blob) => Promise<CallOutcome<T>>,
): Promise<CallOutcome<T>> => {
  const drawn = await drawnUpright(photo);
  const file = await drawn?.canvas.convertToBlob({ type: 'image/jpeg', quality: 0.85 });
  if (file !== undefined) return send(file);
  const problem = problemOf('photo-not-a-picture', { file: name });
  return { ok: false, why: { kind: 'later', problem } };
};
