import type { SavedStudy, Study } from '../../core/study/study.ts';
import type { Stock } from '../../core/stock/stock.ts';

/** A study with what the store knows about it. */
export interface StoredStudy {
  readonly study: Study;
  /** Rises with every change: two equal revisions are the same study. */
  readonly revision: number;
  /** ISO 8601, UTC. */
  readonly touchedAt: string;
}

/** One line of the list of studies. */
export interface StudySummary {
  readonly id: string;
  readonly isExample: boolean;
  readonly createdAt: string;
  readonly touchedAt: string;
  readonly revision: number;
  readonly stock: Stock;
  readonly machineId: string;
  /** The machine's name, where it has one. */
  readonly machine?: string;
  /** The proven setting that its strip checks. */
  readonly stripOf?: string;
  readonly cardCodes: readonly string[];
  readonly tallyCount: number;
}

/** What a study says beside its cards, events and tallies: the part that is replaced when it changes. */
export type StudyHead = Pick<
  SavedStudy,
  'stock' | 'machineId' | 'promise' | 'aim' | 'ask' | 'habit'
>;
