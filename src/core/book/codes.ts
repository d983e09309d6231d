/** How the sheet or the machine at hand differs from what a proven setting holds for. */
export const bookCodes = [
  'holds-for-other-machine',
  'holds-for-another-machine',
  'holds-for-other-material',
  'holds-for-material-named-otherwise',
  'holds-for-other-thickness',
  'holds-for-other-caliper',
  'holds-for-other-batch',
  'holds-for-batch-not-named',
  'holds-for-other-sheet',
  'holds-for-sheet-not-named',
  'holds-for-power-above-limit',
  'holds-for-speed-out-of-range',
] as const;

export type BookCode = (typeof bookCodes)[number];
