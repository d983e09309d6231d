import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import type { StorePlace } from '../../src/host/storePlace.ts';
import { openStore } from '../../src/store/openStore.ts';
import { sampleTime } from '../samples/studies.ts';
import type { EngineUnderTest } from './store.ts';

const writer = fileURLToPath(new URL('storeWriter.mjs', import.meta.url));

/** The engine at a place, with programs of their own that write to it. */
export const engineAt = (place: StorePlace, destroy: () => Promise<void>): EngineUnderTest => ({
  open: () => openStore(place, sampleTime),
  startWriter: ({ studyId, name, count, heard }) => {
    const child = spawn(
      process.execPath,
      [writer, JSON.stringify(place), studyId, name, String(count)],
      { stdio: ['ignore', 'pipe', 'inherit'] },
    );
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
  destroy,
});
