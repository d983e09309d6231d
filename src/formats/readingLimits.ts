/** What a file for a small laser may hold. Beyond this it is a slip or an attack, and reading stops. */
export const readingLimits = {
  /** Of the file; the signs of its text are no more than that. */
  bytes: 40_000_000,
  /** Points of all lines. */
  points: 2_000_000,
  /** Moves, comments or settings of a program, some 500 bytes each until they are judged. */
  moves: 800_000,
  /** Elements or entities, copies included. */
  parts: 500_000,
  /** Signs of one line of a program, whose standard allows 256. */
  lineSigns: 10_000,
  /** Signs of path data, read anew for every copy. */
  dataSigns: 45_000_000,
  /** Groups within groups, copies within copies. */
  depth: 200,
  /** Distance from zero, mm. */
  farthestMm: 100_000,
} as const;
