import { StoreError } from './storeError.ts';

/** What SQLite and the file system throw, in the codes that have words. Everything else is a bug and passes through. */
export const explainSqlite = (thrown: unknown, file: string): unknown => {
  const code = codeOf(thrown);
  if (thrown instanceof StoreError || code === undefined) return thrown;
  if (/^SQLITE_(READONLY|FULL|IOERR_WRITE)/.test(code) || ['EROFS', 'ENOSPC'].includes(code))
    return new StoreError('store-not-writable', { file }, thrown);
  if (/^SQLITE_(CANTOPEN|PERM|AUTH|IOERR)/.test(code) || fileErrors.includes(code))
    return new StoreError('store-not-readable', { file }, thrown);
  if (/^SQLITE_(NOTADB|CORRUPT)/.test(code))
    return new StoreError('store-not-ours', { file }, thrown);
  if (/^SQLITE_(BUSY|LOCKED)/.test(code)) return new StoreError('store-busy', { file }, thrown);
  return thrown;
};

const fileErrors = ['EACCES', 'EPERM', 'ENOENT', 'ENOTDIR', 'EISDIR', 'EEXIST'];

const codeOf = (thrown: unknown): string | undefined =>
  thrown instanceof Error && 'code' in thrown && typeof thrown.code === 'string'
    ? thrown.code
    : undefined;
