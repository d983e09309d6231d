import { z } from 'zod';

/** One question to the project's own functions, and perhaps the answer from outside. */
export const referenceCase = z.looseObject({
  name: z.string(),
  input: z.record(z.string(), z.unknown()),
  expected: z.unknown().optional(),
  tolerance: z.union([z.number(), z.record(z.string(), z.unknown())]).optional(),
});

/** A file of reference values. Its source and notes are kept in it and read by people. */
export const referenceFile = z.looseObject({
  id: z.string(),
  data: z.unknown().optional(),
  cases: z.array(referenceCase),
});

export type ReferenceCase = z.infer<typeof referenceCase>;
export type ReferenceFile = z.infer<typeof referenceFile>;

/**
 * What the project computes for one case: keys named as in `expected`. Undefined: the project has no function for this
 * kind of case. @throws ZodError where the input is not of its kind's form.
 */
export type Answerer = (input: ReferenceCase['input'], data: unknown) => object | undefined;
