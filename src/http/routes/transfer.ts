import type { FastifyInstance } from 'fastify';
import { exportAll } from '../../app/workshop/exportAll.ts';
import { readAllCards } from '../../app/card/readAllCards.ts';
import { importAll } from '../../app/workshop/importAll.ts';
import { andThen, done } from '../../core/problem.ts';
import { cellsCsv } from '../../formats/cellsCsv.ts';
import { bookCsv } from '../../formats/bookCsv.ts';
import { api } from '../../wire/api.ts';
import { problemInWords } from '../../words/words.ts';
import { on } from '../on.ts';
import { goneOrAfter, tablePatienceMs } from '../patience.ts';
import type { ServedPorts } from '../servedPorts.ts';

/** Everything out, and in again. */
export const transferRoutes = (
  app: FastifyInstance,
  ports: ServedPorts,
  bodyLimit: number,
): void => {
  on(app, api.exportAll, async ({ reply }) => {
    reply.header('content-disposition', 'attachment; filename="throughcut-export.json"');
    return done(await exportAll(ports));
  });
  on(app, api.exportBookTable, async ({ reply, gone }) => {
    const { searchBook } = await import('../../app/book/searchBook.ts');
    const patient = goneOrAfter(gone, tablePatienceMs);
    const { entries } = await searchBook(ports.until(patient), '');
    reply
      .type('text/csv; charset=utf-8')
      .header('content-disposition', 'attachment; filename="throughcut-book.csv"')
      .send(bookCsv(entries));
    return done(undefined);
  });
  on(app, api.exportCellTable, async ({ reply }) => {
    reply
      .type('text/csv; charset=utf-8')
      .header('content-disposition', 'attachment; filename="throughcut-cells.csv"')
      .send(cellsCsv(await readAllCards(ports)));
    return done(undefined);
  });
  on(
    app,
    api.importAll,
    async ({ body }) =>
      andThen(await importAll(ports, body), ({ notAdvised, ...counts }) =>
        done({ ...counts, notAdvised: notAdvised.map((problem) => problemInWords(problem)) }),
      ),
    { bodyLimit },
  );
};
