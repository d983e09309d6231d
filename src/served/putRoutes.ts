import type { Pictures } from '../app/ports/pictures.ts';
import { importBytesAtMost } from '../wire/importLimit.ts';
import type { Printer } from './files/printer.ts';
import { answerRoutes } from './routes/answers.ts';
import { bookRoutes } from './routes/book.ts';
import { cardRoutes } from './routes/cards.ts';
import { checkRoutes } from './routes/check.ts';
import { compareRoutes } from './routes/compare.ts';
import { focusRoutes } from './routes/focus.ts';
import { homeRoutes } from './routes/home.ts';
import { kerfRoutes } from './routes/kerf.ts';
import { machineTestRoutes } from './routes/machineTests.ts';
import { machineRoutes } from './routes/machines.ts';
import { markRoutes } from './routes/marks.ts';
import { meteringRoutes } from './routes/meterings.ts';
import { orderRoutes } from './routes/orders.ts';
import { photoRoutes } from './routes/photos.ts';
import { readingRoutes } from './routes/readings.ts';
import { reasoningRoutes } from './routes/reasoning.ts';
import { scoreRoutes } from './routes/score.ts';
import { studyRoutes } from './routes/studies.ts';
import { trailRoutes } from './routes/trail.ts';
import { transferRoutes } from './routes/transfer.ts';
import { wallListRoutes } from './routes/wallList.ts';
import { watchRoutes } from './routes/watch.ts';
import type { ServedPorts } from './servedPorts.ts';
import type { Site } from './site.ts';

/** What prints pages and reads pictures: other layers' work, which the program hands in. */
export interface FileMakers {
  readonly printer: Printer;
  readonly pictures: Pictures;
}

/** Puts every route that works with the workshop where it can be asked. */
export const putRoutes = (
  site: Site,
  ports: ServedPorts,
  { version, printer, pictures }: FileMakers & { readonly version: string },
): void => {
  homeRoutes(site, ports, version);
  machineRoutes(site, ports);
  studyRoutes(site, ports);
  cardRoutes(site, ports, printer);
  photoRoutes(site, ports, pictures);
  readingRoutes(site, ports);
  answerRoutes(site, ports);
  checkRoutes(site, ports);
  compareRoutes(site, ports);
  bookRoutes(site, ports);
  meteringRoutes(site, ports);
  focusRoutes(site, ports, printer);
  kerfRoutes(site, ports, printer);
  markRoutes(site, ports, printer);
  wallListRoutes(site, ports, printer);
  reasoningRoutes(site, ports, printer);
  orderRoutes(site, ports);
  scoreRoutes(site, ports);
  watchRoutes(site, ports);
  machineTestRoutes(site, ports);
  trailRoutes(site, ports);
  transferRoutes(site, ports, importBytesAtMost);
};
