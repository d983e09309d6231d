import { systemClock } from '../host/clock.ts';
import { dataFile, dataFolder } from '../host/dataFolder.ts';
import { keepsOff } from '../host/keepsOff.ts';
import { fromWhereCalled } from '../host/paths.ts';
import { backupSqlite } from '../store/sqliteBackup.ts';
import { restoreSqlite } from '../store/restoreSqlite.ts';
import { printJson, printRefusal, type ExitCode } from './output.ts';

/** `backup`: a whole copy of the store in one file, also while the server is at work. */
export const runBackup = async ({ to }: { readonly to: string }): Promise<ExitCode> => {
  const file = fromWhereCalled(to);
  const free = keepsOff(file);
  if (!free.ok) return printRefusal(free.problem);
  await backupSqlite(dataFile(dataFolder()), file);
  printJson({ backup: file });
  return 0;
};

/** `restore`: puts a backup in the store's place; what was there is kept aside. */
export const runRestore = ({ from }: { readonly from: string }): ExitCode => {
  const store = dataFile(dataFolder());
  const aside = restoreSqlite(store, fromWhereCalled(from), systemClock.now());
  printJson({ restored: store, ...(aside === undefined ? {} : { putAside: aside }) });
  return 0;
};
