import { z } from 'zod';
import { id } from '../formats/saved/bounds.ts';

/**
 * What the data of a server-sent event say. A revision that is the page's own already is no news. No study: look at
 * everything again.
 */
export const liveEvent = z.strictObject({
  studyId: id.exactOptional(),
  /** Absent: the study is gone. */
  revision: z.number().int().exactOptional(),
});
