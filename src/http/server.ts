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
import { finishWithin } from './finishWithin.ts';
import { openMetrics, type ServedRequest } from './metrics.ts';
import { tellMetrics } from './tellMetrics.ts';
import { tlsServer, type TlsOptions } from './tlsServer.ts';
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
  /** Lets `/metrics` be asked from elsewhere. Absent or empty: at this computer alone. */
  readonly metricsToken?: string;
  /** Told of every request that was answered. */
  readonly answered?: (request: ServedRequest) => void;
  /** Encrypts what is served. Absent: it is not. */
  readonly tls?: TlsOptions;
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
  const metrics = openMetrics(version, options.backups);
  const stopHearing = options.ports.store.hear(changes.tell);
  const stored = { ...options.ports, store: watchedStore(options.ports.store, changes.tell) };
  const ports: ServedPorts = {
    ...stored,
    until: (gone) => ({ ...stored, model: options.modelFor(gone) }),
  };
  const app = fastify({
    logger: false,
    bodyLimit: 2 * mebibyte,
    // What is under way is finished, see `finishWithin`.
    forceCloseConnections: 'idle',
    ...(options.tls === undefined ? {} : { serverFactory: tlsServer(options.tls) }),
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
  finishWithin(app, 5000);
  app.addHook('onResponse', (request, reply, next) => {
    const answered = {
      method: request.method,
      route: request.routeOptions.url ?? '',
      status: reply.statusCode,
      tookMs: reply.elapsedTime,
    };
    metrics.note(answered);
    options.answered?.(answered);
    next();
  });
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
  putRoutes(siteOn(app, gate.authorOf), ports, options);
  tellBackups(app, options.backups, changes);
  serveLive(app, { changes, gate, counted: metrics.streams });
  tellMetrics(app, metrics, options.metricsToken);
  app.addHook('onClose', () => {
    stopHearing();
    metrics.close();
    return Promise.resolve();
  });
  serveDocs(app, version);
  await servePage(app, pageFolder);
  return app;
};
