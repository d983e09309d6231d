import type { Setting } from '../machine/setting.ts';
import type { EdgeAsRead, EdgeGrade } from './edge.ts';
import type { Grade, SpoiltReason } from './grade.ts';

/** How a grade came about, where the reader said so: `pushed` still counts as out, `knife` as hangs. */
export type HowItCame = 'fell' | 'pushed' | 'knife';

/** What a grade was read from: a photograph as it was read, or as a person corrected it. Absent: by hand. */
export type ReadingSource = 'photo' | 'photo-corrected';

/**
 * One thing that a person said of a card. Events are only ever added; what the card says now is their fold
 * (`readCard`), so nothing is lost and every step can be undone. The id is made where the tap happened, so that an
 * event sent twice is stored once.
 */
export type ReadingEvent = {
  readonly id: string;
  readonly cardCode: string;
  /** ISO 8601, UTC. */
  readonly at: string;
} & (
  | {
      readonly kind: 'graded';
      readonly cell: string;
      readonly grade: Grade;
      readonly how?: HowItCame;
      readonly source?: ReadingSource;
    }
  | { readonly kind: 'spoilt'; readonly cell: string; readonly reason: SpoiltReason }
  | {
      readonly kind: 'edge';
      readonly cell: string;
      /** Null: what was said of it is taken back. */
      readonly edge: EdgeGrade | null;
      /** The sheet was masked with tape. Absent: not. */
      readonly taped?: true;
    }
  | { readonly kind: 'cleared'; readonly cell: string }
  | { readonly kind: 'as-cut'; readonly cell: string; readonly setting: Setting }
  | { readonly kind: 'undone'; readonly eventId: string }
);

/** A cell as it stands after all that was said of it. */
export interface CellAsRead {
  readonly id: string;
  readonly rung: string;
  /** As cut: corrected where someone corrected it. */
  readonly setting: Setting;
  readonly corrected: boolean;
  readonly reading:
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
}
