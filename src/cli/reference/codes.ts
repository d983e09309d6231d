/** What can be the matter with a reference file. */
export const referenceCodes = [
  'reference-no-file',
  'reference-file-not-found',
  'reference-file-not-json',
  'reference-file-of-other-form',
  'reference-case-of-other-form',
] as const;

export type ReferenceCode = (typeof referenceCodes)[number];
