import { first } from './0001-first.ts';
import { machineTests } from './0002-machine-tests.ts';
import { exampleTests } from './0003-example-tests.ts';
import { machines } from './0004-machines.ts';
import { onTheBed } from './0005-on-the-bed.ts';
import { orderByCounter } from './0006-order-by-counter.ts';
import { startedOrders } from './0007-started-orders.ts';
import { foundByColumns } from './0008-found-by.ts';
import { cardPhotos } from './0009-card-photos.ts';
import { phones } from './0010-phones.ts';
import { nearInBook } from './0011-near-in-book.ts';
import { ownWords } from './0012-own-words.ts';
import { settingPhotos } from './0013-setting-photos.ts';
import { settingChanges } from './0014-setting-changes.ts';
import { rolesOfPhones } from './0015-roles.ts';
import type { Migration } from './migration.ts';

/** Every step, in order. A new one is one file and one line here. */
export const migrations: readonly Migration[] = [
  first,
  machineTests,
  exampleTests,
  machines,
  onTheBed,
  orderByCounter,
  startedOrders,
  foundByColumns,
  cardPhotos,
  phones,
  nearInBook,
  ownWords,
  settingPhotos,
  settingChanges,
  rolesOfPhones,
];
