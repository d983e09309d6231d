import { systemClock } from '../host/clock.ts';
import { dataFolder } from '../host/dataFolder.ts';
import { keepsOff } from '../host/keepsOff.ts';
import { fromWhereCalled } from '../host/paths.ts';
import { storePlace } from '../host/storePlace.ts';
import { backupDatabase, restoreDatabase } from '../store/databaseBackup.ts';
import { backupSqlite } from '../store/sqliteBackup.ts';
import { restoreSqlite } from '../store/restoreSqlite.ts';
import { printJson, printRefusal, type ExitCode } from './output.ts';

/** `backup`: a whole copy of the store in one file, also while the server is at work. */
export const runBackup = async ({ to }: { readonly to: string }): Promise<ExitCode> => {
  const file = fromWhereCalled(to);
  const free = keepsOff(file);
  if (!free.ok) return printRefusal(free.problem);
  const place = storePlace();
  if (place.kind === 'file') await backupSqlite(place.file, file);
  else await backupDatabase(place, { to: file, at: systemClock.now() });
  printJson({ backup: file });
  return 0;
};

/** `restore`: puts a backup in the store's place; what was there is kept aside. */
export const runRestore = async ({ from }: { readonly from: string }): Promise<ExitCode> => {
  const place = storePlace();
  const backup = fromWhereCalled(from);
  const at = systemClock.now();
  if (place.kind === 'file') {
    const aside = restoreSqlite(place.file, backup, at);
    printJson({ restored: place.file, ...(aside === undefined ? {} : { putAside: aside }) });
    return 0;
  }
  printJson(await restoreDatabase(place, { from: backup, asideIn: dataFolder(), at }));
  return 0;
};
