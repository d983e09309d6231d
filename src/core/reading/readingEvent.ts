import type { Author } from '../author.ts';
import type { Setting } from '../machine/setting.ts';
import type { CellEvent, CellReading } from './cellEvent.ts';

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
} & Author &
  (CellEvent | { readonly kind: 'undone'; readonly eventId: string });

/** A cell as it stands after all that was said of it. */
export interface CellAsRead {
  readonly id: string;
  readonly rung: string;
  /** As cut: corrected where someone corrected it. */
  readonly setting: Setting;
  readonly corrected: boolean;
  readonly reading: CellReading;
}
