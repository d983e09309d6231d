/** What can be the matter with a file or a message from outside. */
export const formatCodes = [
  'file-not-json',
  'file-version-unknown',
  'file-key-unknown',
  'file-value-missing',
  'file-value-wrong-type',
  'file-value-too-small',
  'file-value-not-above',
  'file-value-too-big',
  'file-value-not-below',
  'file-value-not-allowed',
  'file-text-empty',
  'file-text-too-long',
  'file-list-too-short',
  'file-list-too-long',
  'file-value-refused',
  'plan-not-said',
] as const;

export type FormatCode = (typeof formatCodes)[number];
