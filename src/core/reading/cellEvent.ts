import type { Setting } from '../machine/setting.ts';
import type { EdgeAsRead, EdgeGrade } from './edge.ts';
import type { Grade, SpoiltReason } from './grade.ts';

/** How a grade came about, where the reader said so: `pushed` still counts as out, `knife` as hangs. */
export const howItCame = ['fell', 'pushed', 'knife'] as const;
export type HowItCame = (typeof howItCame)[number];

/** What a grade was read from: a photograph as it was read, or as a person corrected it. Absent: by hand. */
export const readingSources = ['photo', 'photo-corrected'] as const;
export type ReadingSource = (typeof readingSources)[number];

/** One thing that a person said of a cell. What each kind does to what was said before stands below it. */
export type CellEvent = { readonly cell: string } & (
  | {
      readonly kind: 'graded';
      readonly grade: Grade;
      readonly how?: HowItCame;
      readonly source?: ReadingSource;
    }
  | { readonly kind: 'spoilt'; readonly reason: SpoiltReason }
  | {
      readonly kind: 'edge';
      /** Null: what was said of it is taken back. */
      readonly edge: EdgeGrade | null;
      /** The sheet was masked with tape. Absent: not. */
      readonly taped?: true;
    }
  | { readonly kind: 'cleared' }
  | { readonly kind: 'as-cut'; readonly setting: Setting }
);

export type CellReading =
  | { readonly kind: 'unread' }
  | {
      readonly kind: 'graded';
      readonly grade: Grade;
      readonly how?: HowItCame;
      readonly source?: ReadingSource;
      /** Of a shape that came out, where somebody graded its edge. */
      readonly edge?: EdgeAsRead;
    }
  | { readonly kind: 'spoilt'; readonly reason: SpoiltReason };

/** What stands of all that was said of a cell. */
export interface SaidOfCell {
  readonly reading: CellReading;
  readonly asCut?: Setting;
  /** Null: taken back. */
  readonly edge?: EdgeAsRead | null;
}

export const nothingSaid: SaidOfCell = { reading: { kind: 'unread' } };

/** What stands after one more event. */
export const foldEvent = (said: SaidOfCell, event: CellEvent): SaidOfCell => {
  switch (event.kind) {
    case 'graded': {
      const how = event.how === undefined ? {} : { how: event.how };
      const source = event.source === undefined ? {} : { source: event.source };
      return { ...said, reading: { kind: 'graded', grade: event.grade, ...how, ...source } };
    }
    case 'spoilt':
      return { ...said, reading: { kind: 'spoilt', reason: event.reason }, edge: null };
    case 'cleared':
      return { ...said, reading: { kind: 'unread' }, edge: null };
    case 'edge': {
      const taped = event.taped === undefined ? {} : { taped: event.taped };
      return { ...said, edge: event.edge === null ? null : { edge: event.edge, ...taped } };
    }
    case 'as-cut':
      return { ...said, asCut: event.setting };
  }
};

/** The reading, and the edge with it where it is one of a shape that came out. */
export const readingOf = ({ reading, edge }: SaidOfCell): CellReading =>
  edge && reading.kind === 'graded' && reading.grade === 'out' ? { ...reading, edge } : reading;
