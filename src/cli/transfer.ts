import { exportAll } from '../app/exportAll.ts';
import { importAll } from '../app/importAll.ts';
import { searchBook } from '../app/searchBook.ts';
import { bookCsv } from '../formats/bookCsv.ts';
import { parseExportFile } from '../formats/exportFile.ts';
import { readTextFile, writeTextFile } from '../host/files.ts';
import { printJson, printOutcome, printRefusal, type ExitCode } from './output.ts';
import { withStore } from './withStore.ts';

export interface ExportOptions {
  /** Absent: standard output. */
  readonly to?: string;
  /** The book alone, as a flat table. */
  readonly csv?: boolean;
}

/** `export`: everything as one JSON file, or the book as CSV. */
export const runExport = async ({ to, csv = false }: ExportOptions): Promise<ExitCode> => {
  const content = await withStore(async (ports) =>
    csv
      ? bookCsv(await searchBook(ports, ''))
      : `${JSON.stringify(await exportAll(ports), null, 2)}\n`,
  );
  if (to === undefined) {
    process.stdout.write(content);
    return 0;
  }
  return printOutcome(await writeTextFile(to, content), (file) => ({ exported: file }));
};

/** `import`: adds what a file holds that is not here yet, all or nothing. */
export const runImport = async ({ from }: { readonly from: string }): Promise<ExitCode> => {
  const text = await readTextFile(from);
  if (!text.ok) return printRefusal(text.problem);
  const file = parseExportFile(text.value);
  if (!file.ok) return printRefusal(file.problem);
  const imported = await withStore((ports) => importAll(ports, file.value));
  return printOutcome(imported, (counts) => counts);
};

/** `book list`: the proven settings that fit all the words. */
export const runBookList = async (words: readonly string[]): Promise<ExitCode> => {
  const entries = await withStore((ports) => searchBook(ports, words.join(' ')));
  printJson({ version: 1, entries });
  return 0;
};
