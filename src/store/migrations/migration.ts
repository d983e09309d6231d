/**
 * One step of the schema. Steps run in order, each once, all of a start's steps in one transaction. A step that has
 * been released is never edited: a change is a new step.
 */
export interface Migration {
  readonly number: number;
  readonly name: string;
  /** Statements that SQLite and PostgreSQL both understand. */
  readonly statements: readonly string[];
}
