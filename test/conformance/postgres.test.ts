import { afterAll, beforeAll } from 'vitest';
import { startPostgres, type PostgresServer } from '../postgres/postgresServer.ts';
import { engineAt } from './engineAt.ts';
import { listConformance } from './lists.ts';
import { takeBackConformance } from './takeBack.ts';
import { storeConformance, type EngineUnderTest } from './store.ts';

let server: PostgresServer;
let made = 0;

beforeAll(async () => {
  server = await startPostgres();
});
afterAll(() => server.destroy());

/** A schema of its own in one database: made quicker than a database. */
const make = (): Promise<EngineUnderTest> => {
  made += 1;
  const url = `${server.urlOf('postgres')}?schema=place_${String(made)}`;
  return Promise.resolve(engineAt({ kind: 'database', url }, () => Promise.resolve()));
};

storeConformance('PostgreSQL', make);
listConformance('PostgreSQL', make);
takeBackConformance('PostgreSQL', make);
