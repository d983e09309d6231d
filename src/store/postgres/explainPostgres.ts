import { problemOf } from '../../core/problem.ts';
import type { StoreCode } from '../../core/problems/store.ts';
import { StoreError } from '../storeError.ts';
import { ServerTakesNoChanges } from './serverTakesNoChanges.ts';

/**
 * What the server and the network throw, in the codes that have words (PostgreSQL manual, appendix A, error codes). Everything
 * else is a bug and passes through.
 */
export const explainPostgres = (thrown: unknown, place: string): unknown => {
  const known = codeFor(thrown);
  return known === undefined ? thrown : new StoreError(problemOf(known, { place }), thrown);
};

type NamesPlace = Extract<
  StoreCode,
  | 'store-unreachable'
  | 'store-refuses-login'
  | 'store-database-not-there'
  | 'store-takes-no-changes'
  | 'store-server-full'
  | 'store-server-busy'
>;

const codeFor = (thrown: unknown): NamesPlace | undefined => {
  if (thrown instanceof ServerTakesNoChanges) return 'store-takes-no-changes';
  if (!(thrown instanceof Error) || 'problem' in thrown) return undefined;
  // A host of several addresses fails with what each of them said.
  if (thrown instanceof AggregateError) return codeFor(thrown.errors[0]);
  const code = 'code' in thrown && typeof thrown.code === 'string' ? thrown.code : '';
  return bySqlState.find(([state]) => code.startsWith(state))?.[1] ?? byNetwork(code, thrown);
};

const bySqlState: readonly (readonly [string, NamesPlace])[] = [
  ['08', 'store-unreachable'],
  ['57P0', 'store-unreachable'],
  ['25P03', 'store-unreachable'],
  ['28', 'store-refuses-login'],
  ['3D000', 'store-database-not-there'],
  ['25006', 'store-takes-no-changes'],
  ['42501', 'store-takes-no-changes'],
  ['53300', 'store-server-busy'],
  ['55P03', 'store-server-busy'],
  ['40', 'store-server-busy'],
  ['53', 'store-server-full'],
  ['58030', 'store-server-full'],
];

const networkErrors = [
  'ECONNREFUSED',
  'ECONNRESET',
  'ENOTFOUND',
  'EAI_AGAIN',
  'ETIMEDOUT',
  'EPIPE',
  'EHOSTUNREACH',
  'ENETUNREACH',
  'ENOENT',
];

/** The driver gives no code for a connection that ends or does not come. */
const byNetwork = (code: string, { message }: Error): NamesPlace | undefined =>
  networkErrors.includes(code) ||
  /connection (terminated|ended|timeout|has been discarded)|timeout exceeded when trying to connect|Client has encountered a connection error|not queryable/i.test(
    message,
  )
    ? 'store-unreachable'
    : undefined;
