import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance, LightMyRequestResponse } from 'fastify';
import type { z } from 'zod';
import { modelHere } from '../../src/app/sums/modelHere.ts';
import type { AskingPorts, Ids } from '../../src/app/ports/ports.ts';
import { done } from '../../src/core/problem.ts';
import { buildServer, type ServerOptions } from '../../src/http/server.ts';
import type { StorePlace } from '../../src/host/storePlace.ts';
import type { Printer } from '../../src/served/files/printer.ts';
import { openStore } from '../../src/store/openStore.ts';
import { sharpPictures } from '../../src/host/pictures.ts';
import { errorReply } from '../../src/wire/problem.ts';
import { addressOf, type ReplyOf, type Route } from '../../src/wire/route.ts';
import { sampleTime } from './studies.ts';

/** A server on a store of its own, asked without a network. */
export interface TestServer {
  readonly app: FastifyInstance;
  readonly ports: AskingPorts;
  /** What was reported as unexpected. */
  readonly reported: readonly unknown[];
  /** Asks a route and checks what comes back against its shape. Fails unless the status is 200. */
  readonly ask: <R extends Route>(route: R, asked?: Asked) => Promise<ReplyOf<R>>;
  /** Asks a route that is to be refused: the status and the code, after checking that both sentences are there. */
  readonly refusal: (
    route: Route,
    asked?: Asked,
  ) => Promise<readonly [status: number, code: string]>;
  readonly send: (route: Route, asked?: Asked) => Promise<LightMyRequestResponse>;
  readonly close: () => Promise<void>;
}

/** Its pages say of what they are, and no more. */
const samplePrinter: Printer = {
  jobSheet: ({ card }) => printed(card.code),
  pageBeside: ({ title }) => printed(title),
  wallList: (machines) => printed(`${String(machines.length)} machines`),
  reasoning: (_cut, { speed }) => printed(String(speed?.speedMmPerS ?? 'no speed')),
};
const printed = (of: string) => Promise.resolve(done(Buffer.from(`%PDF of ${of}`)));

interface Asked {
  readonly params?: Readonly<Record<string, string>>;
  readonly query?: Readonly<Record<string, string | number>>;
  readonly body?: unknown;
}

export const testServer = async (
  over: Partial<ServerOptions> = {},
  place?: StorePlace,
): Promise<TestServer> => {
  const folder = mkdtempSync(join(tmpdir(), 'throughcut-http-'));
  const store = await openStore(
    place ?? { kind: 'file', file: join(folder, 'w.sqlite') },
    sampleTime,
  );
  const ports = { store, clock: countingClock(), ids: countingIds(), model: modelHere };
  const reported: unknown[] = [];
  const app = await buildServer({
    ports,
    modelFor: () => modelHere,
    version: '9.9.9',
    printer: samplePrinter,
    pictures: sharpPictures,
    report: (error) => reported.push(error),
    ...over,
  });
  const send: TestServer['send'] = (route, { params, query, body } = {}) =>
    app.inject({
      method: route.method,
      url: addressOf(route, params, query),
      headers: { host: '127.0.0.1:4870' },
      ...(body === undefined ? {} : { payload: JSON.stringify(body) }),
      ...(body === undefined
        ? {}
        : { headers: { host: '127.0.0.1:4870', 'content-type': 'application/json' } }),
    });
  return {
    app,
    ports,
    reported,
    send,
    ask: async (route, asked) => {
      const response = await send(route, asked);
      if (response.statusCode !== 200) throw new Error(`${route.path}: ${response.body}`);
      return checked(route.reply, response) as ReplyOf<typeof route>;
    },
    refusal: async (route, asked) => {
      const response = await send(route, asked);
      const { error } = errorReply.parse(response.json());
      if (
        error.message.length < 10 ||
        error.remedy.length < 10 ||
        /has no words/.test(error.message)
      )
        throw new Error(`No sentence for ${error.code}`);
      return [response.statusCode, error.code];
    },
    close: async () => {
      await app.close();
      await store.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
};

const checked = (shape: z.ZodType | undefined, response: LightMyRequestResponse): unknown =>
  shape === undefined ? undefined : shape.parse(response.json());

/** Each asking is a second later. */
const countingClock = () => {
  let seconds = 0;
  return {
    now: () => {
      seconds += 1;
      return new Date(Date.parse(sampleTime) + seconds * 1000).toISOString();
    },
  };
};

const countingIds = (): Ids => {
  let made = 0;
  const next = () => String((made += 1));
  return { newId: () => `made-${next()}`, newCode: () => `M${next().padStart(3, '0')}` };
};
