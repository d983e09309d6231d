/** What a file for a small laser may hold. Beyond this it is a slip or an attack, and reading stops. */
export const readingLimits = {
  /** Signs of text. */
  signs: 40_000_000,
  /** Points of all lines. */
  points: 2_000_000,
  /** Elements or entities, copies included. */
  parts: 500_000,
  /** Signs of path data, read anew for every copy. */
  dataSigns: 120_000_000,
  /** Groups within groups, copies within copies. */
  depth: 200,
  /** Distance from zero, mm. */
  farthestMm: 100_000,
} as const;
