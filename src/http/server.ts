import helmet from '@fastify/helmet';
import fastify, { type FastifyInstance } from 'fastify';
import type { BackupsSeen } from '../app/ports/backups.ts';
import type { Ports } from '../app/ports/ports.ts';
import { watchedStore } from '../app/ports/watchedStore.ts';
import { putRoutes, type FileMakers } from '../served/putRoutes.ts';
import type { ModelFor, ServedPorts } from '../served/servedPorts.ts';
import { tellBackups } from './backups.ts';
import { serveDocs } from './docsPage.ts';
import { refuseThrown } from './errors.ts';
import { guard, isLoopback } from './guard.ts';
import { listening, refuseUnread, requestLimitMs } from './halfRequests.ts';
import { openChanges, serveLive } from './live.ts';
import { siteOn } from './on.ts';
import { servePage } from './page.ts';
import { gatePhones, type Lan } from './phones.ts';
import { refusalHeaders, safeHeaders } from './safeHeaders.ts';

export interface ServerOptions extends FileMakers {
  readonly ports: Ports;
  readonly modelFor: ModelFor;
  readonly version: string;
  /** Folder of the built page. Absent: only the API is served. */
  readonly pageFolder?: string;
  /** Lets phones in. Absent: this computer alone is served. */
  readonly lan?: Lan;
  /** How the backups stand. Absent: none are made. */
  readonly backups?: BackupsSeen;
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

  const gate = await gatePhones(app, options.lan, changes);
  app.addContentTypeParser(/^image\//, { parseAs: 'buffer' }, (_request, body, parsed) =>
    parsed(null, body),
  );
  putRoutes(siteOn(app), ports, options);
  tellBackups(app, options.backups, changes);
  serveLive(app, changes, gate);
  app.addHook('onClose', () => {
    stopHearing();
    return Promise.resolve();
  });
  serveDocs(app, version);
  await servePage(app, pageFolder);
  return app;
};
