import type { Kysely } from 'kysely';

/**
 * One step of the schema. Steps run in order, each once, all of a start's steps in one transaction. A step that has
 * been released is never edited: a change is a new step.
 */
export interface Migration {
  readonly number: number;
  readonly name: string;
  /** Statements that SQLite and PostgreSQL both understand. */
  readonly statements: readonly string[];
  /** Carries over what is stored, where statements alone cannot; runs behind them. */
  readonly fill?: (db: Kysely<never>) => Promise<void>;
  /** Statements behind that. */
  readonly after?: readonly string[];
}
