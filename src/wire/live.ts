import { z } from 'zod';
import { roles } from '../core/role.ts';
import { id } from '../formats/saved/bounds.ts';

/**
 * What the data of a server-sent event say. A revision that is the page's own already is no news. No study: look at
 * everything again.
 */
export const liveEvent = z.strictObject({
  studyId: id.exactOptional(),
  /** Absent: the study is gone. */
  revision: z.number().int().exactOptional(),
  /** What the one who listens may do: said at first, and when it changes. It is no news of anything stored. */
  role: z.enum(roles).exactOptional(),
});

export type LiveEvent = z.output<typeof liveEvent>;
