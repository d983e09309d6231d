import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { operationsIn, requestOf, type Described } from '../../bench/server/operations.ts';
import { modelHere } from '../../src/app/sums/modelHere.ts';
import type { Model, QuestionOf, SumName, SumOutcome } from '../../src/app/sums/model.ts';
import { refused } from '../../src/core/problem.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { tenthOf } from '../everyCase.ts';
import { testServer, type TestServer } from '../samples/server.ts';
import { startPostgres, type PostgresServer } from './postgresServer.ts';

/** Sums are the same whatever engine is below; here only what is stored counts. */
const noSums: Model = {
  ask: async <K extends SumName>(name: K, question: QuestionOf<K>): Promise<SumOutcome<K>> =>
    name === 'exampleWorkshop'
      ? modelHere.ask(name, question)
      : (refused('sum-took-too-long', { seconds: 0 }) as SumOutcome<K>),
};

let postgres: PostgresServer;
let servers: readonly [TestServer, TestServer];
beforeAll(async () => {
  postgres = await startPostgres();
  const over = { modelFor: () => noSums };
  servers = [
    await testServer(over),
    await testServer(over, { kind: 'database', url: postgres.urlOf('postgres') }),
  ];
}, 60_000);
afterAll(async () => {
  for (const server of servers) await server.close();
  await postgres.destroy();
});

const requests = tenthOf(5_000);

describe('what is said of one workshop on either engine', () => {
  it('is the same to the byte, whatever is asked', async () => {
    const headers = { host: '127.0.0.1:4870' };
    const both = async (asked: {
      readonly method: string;
      readonly url: string;
      readonly body?: unknown;
    }) => {
      const replies = await Promise.all(
        servers.map(({ app }) =>
          app.inject({
            method: asked.method as 'GET',
            url: asked.url,
            headers:
              asked.body === undefined
                ? headers
                : { ...headers, 'content-type': 'application/json' },
            ...(asked.body === undefined ? {} : { payload: JSON.stringify(asked.body) }),
          }),
        ),
      );
      return replies.map(({ statusCode, body }) => `${String(statusCode)} ${body}`);
    };
    await both({ method: 'POST', url: '/api/example' });
    const [described] = servers;
    const description = await described.app.inject({
      method: 'GET',
      url: '/api/openapi.json',
      headers,
    });
    const operations = operationsIn(description.json<Described>());
    const random = seededRandom(17);
    const ids = ['example-plywood', 'example-kept', 'example-machine', 'LARK', 'default'];
    let answered = 0;
    for (let n = 0; n < requests; n += 1) {
      const one = operations[random.integer(operations.length)];
      if (one === undefined) continue;
      const { address, body } = requestOf(one, random, ids);
      const [file, database] = await both({
        method: one.method,
        url: address,
        ...(body === undefined ? {} : { body }),
      });
      expect(database, `${one.method} ${address} ${JSON.stringify(body)}`).toBe(file);
      if (file?.startsWith('200') !== true) continue;
      answered += 1;
      for (const [, id = ''] of file.matchAll(/"id":"([^"]{1,60})"/g))
        if (ids.length < 400) ids.push(id);
    }
    expect(answered).toBeGreaterThan(requests / 10);
    for (const url of ['/api/home', '/api/studies', '/api/book', '/api/export', '/api/machines']) {
      const [file, database] = await both({ method: 'GET', url });
      expect(database).toBe(file);
    }
    expect(servers.map(({ reported }) => reported)).toEqual([[], []]);
  }, 600_000);
});
