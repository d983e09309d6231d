import { z } from 'zod';

/** What every refusal looks like, whatever the route: status 4xx, and nothing was changed. */
export const errorReply = z.strictObject({
  error: z.strictObject({
    /** Stable; for programs. */
    code: z.string(),
    /** What is wrong, for a person. */
    message: z.string(),
    /** What to do about it, for a person. */
    remedy: z.string(),
  }),
});
export type ErrorReply = z.infer<typeof errorReply>;

/** Something worth saying beside an answer. */
export const saidProblem = z.strictObject({ code: z.string(), message: z.string() });

/** The same with what a person can do about it. */
export const saidInFull = saidProblem.extend({ remedy: z.string() });
