import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { openSqliteStore } from '../../src/store/sqliteStore.ts';
import { sampleTime } from '../samples/studies.ts';
import { listConformance } from './lists.ts';
import { storeConformance, type EngineUnderTest } from './store.ts';

const writer = fileURLToPath(new URL('sqliteWriter.mjs', import.meta.url));

const make = (): Promise<EngineUnderTest> => {
  const folder = mkdtempSync(join(tmpdir(), 'throughcut-store-'));
  const file = join(folder, 'made', 'on', 'demand', 'workshop.sqlite');
  return Promise.resolve({
    open: () => openSqliteStore({ file, openedAt: sampleTime }),
    startWriter: ({ studyId, name, count, heard }) => {
      const child = spawn(process.execPath, [writer, file, studyId, name, String(count)], {
        stdio: ['ignore', 'pipe', 'inherit'],
      });
      createInterface({ input: child.stdout }).on('line', heard);
      return {
        ended: new Promise((resolve) =>
          child.on('close', () => {
            resolve();
          }),
        ),
        kill: () => child.kill('SIGKILL'),
      };
    },
    destroy: () => {
      rmSync(folder, { recursive: true, force: true });
      return Promise.resolve();
    },
  });
};

storeConformance('SQLite', make);
listConformance('SQLite', make);
