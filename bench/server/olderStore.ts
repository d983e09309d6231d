import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';

const isSource = import.meta.url.endsWith('.ts');
const fixtures = new URL(
  `../../${isSource ? '' : '../'}test/conformance/fixtures/`,
  import.meta.url,
);

/** What earlier schemas kept, each as a file of statements; the last of them is the schema of today. */
export const olderSchemas = (): readonly string[] =>
  readdirSync(fixtures)
    .filter((name) => name.endsWith('.sql'))
    .sort((a, b) => a.localeCompare(b, 'en', { numeric: true }))
    .slice(0, -1);

/** How many sheets and kept settings such a store holds beside the one it came with: bringing it up to date takes a moment. */
const copies = 600;

/** Rows of what there may be many of, with the ids that a copy needs its own of. */
const manifold = /^insert into (study|card|reading_event|proven_setting) /i;
const ownIds = /(['"])(s1|b1)\1/g;

/** Writes a store as an earlier program left it, and gives the ids of its sheets and kept settings. */
export const writeOlderStore = (file: string, schema: string): readonly string[] => {
  const text = readFileSync(new URL(schema, fixtures), 'utf8');
  const rows = text.split('\n').filter((line) => manifold.test(line));
  mkdirSync(dirname(file), { recursive: true });
  const db = new Database(file);
  db.exec(`begin; ${text}`);
  const ids = new Set(['s1', 'b1']);
  for (let copy = 0; copy < copies; copy += 1)
    for (const row of rows)
      db.exec(
        row.replaceAll(ownIds, (_, quote: string, id: string) => {
          ids.add(`${id}-${String(copy)}`);
          return `${quote}${id}-${String(copy)}${quote}`;
        }),
      );
  db.exec('commit');
  db.close();
  return [...ids];
};

/** The newest step that a store notes, read without opening it as a store. */
export const schemaOf = (file: string): number => {
  const db = new Database(file, { readonly: true });
  try {
    return Number(db.prepare('select max(number) from schema_step').pluck().get());
  } finally {
    db.close();
  }
};
