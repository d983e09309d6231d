/** A column: its heading, named with its unit, and how to read its value from a row. */
export type Columns<Row> = Readonly<Record<string, (row: Row) => string | number | undefined>>;

/** Rows as the lines of a table: RFC 4180, that is commas, CRLF, quotes doubled; a heading line first. Each is made when it is asked for. */
export function* csvTable<Row>(columns: Columns<Row>, rows: Iterable<Row>): Generator<string> {
  const valuesOf = Object.values(columns);
  yield csvLine(Object.keys(columns));
  for (const row of rows) yield csvLine(valuesOf.map((valueOf) => valueOf(row) ?? ''));
}

const csvLine = (values: readonly (string | number)[]): string =>
  `${values.map(csvCell).join(',')}\r\n`;

/**
 * One value. A text that a spreadsheet would take for a formula gets an apostrophe before it: a note that came with an
 * import must not be able to run anything. (OWASP, CSV injection: = + - @ tab and carriage return; line feed and the
 * full-width signs as well, since some programs fold them.)
 */
export const csvCell = (value: string | number): string => {
  if (typeof value === 'number') return String(value);
  const harmless = /^\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/u.test(value)
    ? `'${value}`
    : value;
  return /[",\r\n]|^\s|\s$/u.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
};
