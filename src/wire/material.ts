import { z } from 'zod';

export const judgeMaterialQuery = z.strictObject({ text: z.string().min(1).max(200) });

/** What is thought of a material by its name. `allowed` never means safe. */
export const materialJudged = z.strictObject({
  decision: z.enum(['allowed', 'caution', 'refuse', 'unknown']),
  /** The id of the class of stock, where the text names one. */
  material: z.string().exactOptional(),
  /** Absent where it is allowed. */
  said: z
    .strictObject({ code: z.string(), message: z.string(), remedy: z.string() })
    .exactOptional(),
  hazards: z.array(z.string()).exactOptional(),
  /** Who says so. */
  sources: z.array(z.string()).exactOptional(),
});
