import { exportAll } from '../../app/workshop/exportAll.ts';
import { readAllCards } from '../../app/card/readAllCards.ts';
import { importAll } from '../../app/workshop/importAll.ts';
import { andThen, done } from '../../core/problem.ts';
import { cellsCsv } from '../../formats/cellsCsv.ts';
import { bookCsv } from '../../formats/bookCsv.ts';
import { jsonInPieces } from '../../formats/jsonInPieces.ts';
import { api } from '../../wire/api.ts';
import { problemInWords } from '../../words/words.ts';
import { FileAnswer } from '../fileAnswer.ts';
import type { Site } from '../site.ts';
import { goneOrAfter, tablePatienceMs } from '../patience.ts';
import type { ServedPorts } from '../servedPorts.ts';

const json = 'application/json; charset=utf-8';
const csv = 'text/csv; charset=utf-8';

/** Everything out, and in again. */
export const transferRoutes = (site: Site, ports: ServedPorts, bodyLimit: number): void => {
  site.put(api.exportAll, async () => {
    const body = { pieces: jsonInPieces(await exportAll(ports)) };
    return done(new FileAnswer({ contentType: json, body, name: 'throughcut-export.json' }));
  });
  site.put(api.exportBookTable, async ({ gone }) => {
    const { searchBook } = await import('../../app/book/searchBook.ts');
    const patient = goneOrAfter(gone, tablePatienceMs);
    const isOver = (): boolean => patient.aborted;
    const { entries } = await searchBook(ports.until(patient), '', { isOver });
    return done(
      new FileAnswer({
        contentType: csv,
        body: { pieces: bookCsv(entries) },
        name: 'throughcut-book.csv',
      }),
    );
  });
  site.put(api.exportCellTable, async () => {
    const body = { pieces: cellsCsv(await readAllCards(ports)) };
    return done(new FileAnswer({ contentType: csv, body, name: 'throughcut-cells.csv' }));
  });
  site.put(
    api.importAll,
    async ({ body }) =>
      andThen(await importAll(ports, body), ({ notAdvised, ...counts }) =>
        done({ ...counts, notAdvised: notAdvised.map((problem) => problemInWords(problem)) }),
      ),
    { bodyLimit },
  );
};
