import helmet from '@fastify/helmet';
import fastify, { type FastifyInstance } from 'fastify';
import type { Pictures } from '../app/ports/pictures.ts';
import type { Ports } from '../app/ports/ports.ts';
import { watchedStore } from '../app/ports/watchedStore.ts';
import { importBytesAtMost } from '../wire/importLimit.ts';
import type { DrawCardFile, DrawRampFile } from './cardFile.ts';
import type { DrawReasoning } from './reasoningFile.ts';
import { serveDocs } from './docsPage.ts';
import { refuseThrown } from './errors.ts';
import { guard, isLoopback } from './guard.ts';
import { listening, refuseUnread, requestLimitMs } from './halfRequests.ts';
import { openChanges, serveLive } from './live.ts';
import { servePage } from './page.ts';
import { gatePhones, type Lan } from './phones.ts';
import { answerRoutes } from './routes/answers.ts';
import { machineTestRoutes } from './routes/machineTests.ts';
import { checkRoutes } from './routes/check.ts';
import { compareRoutes } from './routes/compare.ts';
import { bookRoutes } from './routes/book.ts';
import { cardRoutes } from './routes/cards.ts';
import { focusRoutes } from './routes/focus.ts';
import { reasoningRoutes } from './routes/reasoning.ts';
import { homeRoutes } from './routes/home.ts';
import { meteringRoutes } from './routes/meterings.ts';
import { readingRoutes } from './routes/readings.ts';
import { machineRoutes } from './routes/machines.ts';
import { studyRoutes } from './routes/studies.ts';
import { transferRoutes } from './routes/transfer.ts';
import { orderRoutes } from './routes/orders.ts';
import { photoRoutes } from './routes/photos.ts';
import { scoreRoutes } from './routes/score.ts';
import { watchRoutes } from './routes/watch.ts';
import { refusalHeaders, safeHeaders } from './safeHeaders.ts';
import type { ModelFor, ServedPorts } from './servedPorts.ts';

export interface ServerOptions {
  readonly ports: Ports;
  readonly modelFor: ModelFor;
  readonly version: string;
  /** Folder of the built page. Absent: only the API is served. */
  readonly pageFolder?: string;
  readonly cardFile: DrawCardFile;
  readonly rampFile: DrawRampFile;
  readonly reasoningFile: DrawReasoning;
  readonly pictures: Pictures;
  /** Lets phones in. Absent: this computer alone is served. */
  readonly lan?: Lan;
  /** Told of every error that nobody expected. */
  readonly report: (error: unknown) => void;
}

const none = (): never => {
  throw new Error('Routes are checked by the shapes of the wire, not by schemas of the framework.');
};

const mebibyte = 1024 * 1024;

/** The server, ready to listen or to be injected into. */
export const buildServer = async (options: ServerOptions): Promise<FastifyInstance> => {
  const { version, pageFolder, report } = options;
  const changes = openChanges();
  const stopHearing = options.ports.store.hear(changes.tell);
  const stored = { ...options.ports, store: watchedStore(options.ports.store, changes.tell) };
  const ports: ServedPorts = {
    ...stored,
    until: (gone) => ({ ...stored, model: options.modelFor(gone) }),
  };
  const app = fastify({
    logger: false,
    bodyLimit: 2 * mebibyte,
    forceCloseConnections: true,
    requestTimeout: requestLimitMs,
    http: listening,
    clientErrorHandler: refuseUnread,
    // What the framework refuses before any route: an address that cannot be read.
    frameworkErrors: (thrown, _request, reply) => {
      refuseThrown(thrown, reply.headers(refusalHeaders), report);
    },
    // Requests are read by the wire's shapes in `on`: the framework's own compilers need not even be loaded.
    schemaController: { compilersFactory: { buildValidator: none, buildSerializer: none } },
    routerOptions: { maxParamLength: 200 },
  });
  app.removeContentTypeParser('text/plain');
  app.setErrorHandler((thrown: unknown, _request, reply) => refuseThrown(thrown, reply, report));
  await app.register(helmet, safeHeaders);
  // After it, so that what is refused bears the same headers as what is answered.
  guard(app, (name) => isLoopback(name) || (options.lan?.isOwnName(name) ?? false));
  app.addHook('onSend', async (request, reply) => {
    if (request.routeOptions.url?.startsWith('/api/') === true && !reply.hasHeader('cache-control'))
      reply.header('cache-control', 'no-store');
  });

  await gatePhones(app, options.lan);
  homeRoutes(app, ports, version);
  machineRoutes(app, ports);
  studyRoutes(app, ports);
  cardRoutes(app, ports, options.cardFile);
  photoRoutes(app, ports, options.pictures);
  readingRoutes(app, ports);
  answerRoutes(app, ports);
  checkRoutes(app, ports);
  compareRoutes(app, ports);
  bookRoutes(app, ports);
  meteringRoutes(app, ports);
  focusRoutes(app, ports, options.rampFile);
  reasoningRoutes(app, ports, options.reasoningFile);
  orderRoutes(app, ports);
  scoreRoutes(app, ports);
  watchRoutes(app, ports);
  machineTestRoutes(app, ports);
  transferRoutes(app, ports, importBytesAtMost);
  serveLive(app, changes);
  app.addHook('onClose', () => {
    stopHearing();
    return Promise.resolve();
  });
  serveDocs(app, version);
  await servePage(app, pageFolder);
  return app;
};
