import { exportAll } from '../app/workshop/exportAll.ts';
import { importAll } from '../app/workshop/importAll.ts';
import type { AskingPorts, Ports } from '../app/ports/ports.ts';
import { readAllCards } from '../app/card/readAllCards.ts';
import { searchBook } from '../app/book/searchBook.ts';
import { bookCsv } from '../formats/bookCsv.ts';
import { cellsCsv } from '../formats/cellsCsv.ts';
import { parseExportFile } from '../formats/exportFile.ts';
import { readTextFile, writeTextFile } from '../host/files.ts';
import { standingInWords } from '../words/standingInWords.ts';
import { problemInWords } from '../words/words.ts';
import { printJson, printOutcome, printRefusal, tell, type ExitCode } from './output.ts';
import { withStore, withStoreToRead } from './withStore.ts';

export interface ExportOptions {
  /** Absent: standard output. */
  readonly to?: string;
  /** One flat table in place of the file: the book, or every cell of every card. */
  readonly table?: 'book' | 'cells';
}

/** `export`: everything as one JSON file, or one table as CSV; what cannot be read is named and the rest exported. */
export const runExport = async ({ to, table }: ExportOptions): Promise<ExitCode> => {
  const { content, leftOut } = await withStoreToRead(
    table === undefined ? wholeContent : tables[table],
    bookPatienceMs,
  );
  for (const { message, remedy } of leftOut) tell(`${message} ${remedy}`);
  if (to === undefined) {
    process.stdout.write(content);
    return 0;
  }
  return printOutcome(await writeTextFile(to, content), (file) => ({
    exported: file,
    ...(leftOut.length === 0 ? {} : { leftOut }),
  }));
};

interface Content {
  readonly content: string;
  readonly leftOut: readonly ReturnType<typeof problemInWords>[];
}

const bookContent = async (ports: AskingPorts, isOver: () => boolean): Promise<Content> => ({
  content: [...bookCsv((await searchBook(ports, '', { isOver })).entries)].join(''),
  leftOut: [],
});

const cellsContent = async (ports: Ports): Promise<Content> => ({
  content: [...cellsCsv(await readAllCards(ports))].join(''),
  leftOut: [],
});

const tables = { book: bookContent, cells: cellsContent };

const wholeContent = async (ports: Ports): Promise<Content> => {
  const file = await exportAll(ports);
  return {
    content: `${JSON.stringify(file, null, 2)}\n`,
    leftOut: (file.leftOut ?? []).map((params) =>
      problemInWords({ code: 'store-row-unreadable', params }),
    ),
  };
};

/** `import`: adds what a file holds that is not here yet, all or nothing. */
export const runImport = async ({ from }: { readonly from: string }): Promise<ExitCode> => {
  const text = await readTextFile(from);
  if (!text.ok) return printRefusal(text.problem);
  const file = parseExportFile(text.value);
  if (!file.ok) return printRefusal(file.problem);
  const imported = await withStore((ports) => importAll(ports, file.value));
  return printOutcome(imported, ({ notAdvised, ...counts }) => ({
    ...counts,
    notAdvised: notAdvised.map((problem) => problemInWords(problem)),
  }));
};

/** How long a whole book may be worked out, ms: where it takes longer, the rest is said not to be known. */
const bookPatienceMs = 20_000;

/** `book list`: the proven settings that fit all the words. */
export const runBookList = async (words: readonly string[]): Promise<ExitCode> => {
  const found = await withStoreToRead(
    (ports, isOver) => searchBook(ports, words.join(' '), { isOver }),
    bookPatienceMs,
  );
  const entries = found.entries.map((one) => ({
    ...(one.entry.isExample ? { invented: true } : {}),
    ...one,
    standing: standingInWords(one.standing),
  }));
  printJson({ version: 1, entries });
  return 0;
};
