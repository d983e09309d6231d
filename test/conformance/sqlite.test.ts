import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { engineAt } from './engineAt.ts';
import { listConformance } from './lists.ts';
import { takeBackConformance } from './takeBack.ts';
import { storeConformance, type EngineUnderTest } from './store.ts';

const make = (): Promise<EngineUnderTest> => {
  const folder = mkdtempSync(join(tmpdir(), 'throughcut-store-'));
  const file = join(folder, 'made', 'on', 'demand', 'workshop.sqlite');
  return Promise.resolve(
    engineAt({ kind: 'file', file }, () => {
      rmSync(folder, { recursive: true, force: true });
      return Promise.resolve();
    }),
  );
};

storeConformance('SQLite', make);
listConformance('SQLite', make);
takeBackConformance('SQLite', make, false);
