import { problemOf } from '../../core/problem.ts';
import { StoreError } from '../storeError.ts';

/** What a browser's database throws, in the codes that have words. Everything else is a bug and passes through. */
export const explainBrowser = (thrown: unknown): unknown => {
  if (thrown instanceof StoreError || !(thrown instanceof DOMException)) return thrown;
  const code = codes[thrown.name];
  return code === undefined ? thrown : new StoreError(problemOf(code), thrown);
};

/** Names of exceptions by the standard: "Indexed Database API 3.0", W3C, and "Web IDL", 2.8.1. */
const codes: Readonly<
  Record<string, 'browser-store-full' | 'browser-store-gone' | 'browser-store-not-to-be-had'>
> = {
  QuotaExceededError: 'browser-store-full',
  InvalidStateError: 'browser-store-gone',
  NotFoundError: 'browser-store-gone',
  TransactionInactiveError: 'browser-store-gone',
  AbortError: 'browser-store-gone',
  UnknownError: 'browser-store-not-to-be-had',
  SecurityError: 'browser-store-not-to-be-had',
  NotReadableError: 'browser-store-not-to-be-had',
};
