import type { Author } from '../author.ts';
import type { Aim } from '../cutmodel/aims.ts';
import type { Card } from '../card/card.ts';
import type { Ask } from '../cutmodel/cutStudy.ts';
import type { Machine } from '../machine/machine.ts';
import type { MachineChange } from '../machine/machineChange.ts';
import type { PromiseWish } from '../reading/promise.ts';
import type { ReadingEvent } from '../reading/readingEvent.ts';
import type { Habit, Tally } from '../reading/tally.ts';
import type { Stock } from '../stock/stock.ts';
import type { Foretold } from './foretold.ts';
import type { StartedOrder } from './startedOrder.ts';

/** A tally as the workshop keeps it. */
export interface RecordedTally extends Tally, Author {
  readonly id: string;
  /** ISO 8601, UTC. */
  readonly at: string;
  /** The proven setting that was tallied, where it was one. */
  readonly provenSettingId?: string;
  /** The order that it belongs to, where that is counted sheet by sheet. */
  readonly orderId?: string;
  readonly foretold?: Foretold;
  /** Who put it right where it was mistyped, the last of them. */
  readonly correctedBy?: string;
}

/**
 * All that a workshop keeps of one stock on one machine: the sheet, its cards and what fell out of them, tallies, habit,
 * and the promise asked for. The machine is named, not copied.
 */
export interface SavedStudy {
  readonly version: 1;
  readonly id: string;
  /** From the invented example workshop, to be removed in one go. */
  readonly isExample: boolean;
  /** ISO 8601, UTC. */
  readonly createdAt: string;
  readonly stock: Stock;
  readonly machineId: string;
  readonly promise: PromiseWish;
  readonly aim: Aim;
  readonly ask: Ask;
  readonly habit?: Habit;
  /** The proven setting that a strip of this sheet checks: the sheet was cut for that, and is not on the bed by itself. */
  readonly stripOf?: string;
  /** Orders that were started on it, oldest first; absent: none. */
  readonly orders?: readonly StartedOrder[];
  readonly tallies: readonly RecordedTally[];
  readonly cards: readonly Card[];
  /** In the order in which they were stored; copies that were put together, in the order in which things were said. */
  readonly events: readonly ReadingEvent[];
}

/** The same with its machine as it stands now: what page and server compute with. */
export interface Study extends SavedStudy {
  readonly machine: Machine;
  /** What was changed on it; a card from before teaches less. */
  readonly machineChanges: readonly MachineChange[];
}
