/** What a sheet's edges are graded by: wood and what browns like it, or acrylic. */
export type EdgeKind = 'wood' | 'acrylic';

/** The edge of a shape that came out, in the words of its material, the best of each first. */
export const edgesOf = {
  wood: ['clean', 'brown', 'black'],
  acrylic: ['clear', 'frosted', 'flamed'],
} as const satisfies Record<EdgeKind, readonly string[]>;

export type EdgeGrade = (typeof edgesOf)[EdgeKind][number];

export type BestEdge = (typeof edgesOf)[EdgeKind][0];

export const edgeKindOfGrade = (edge: EdgeGrade): EdgeKind =>
  edgesOf.wood.some((one) => one === edge) ? 'wood' : 'acrylic';

/** An edge as it was graded. */
export interface EdgeAsRead {
  readonly edge: EdgeGrade;
  /** The sheet was masked with tape. Absent: not. */
  readonly taped?: true;
}
