import { listConformance } from '../conformance/lists.ts';
import { takeBackConformance } from '../conformance/takeBack.ts';
import { storeConformance, type EngineUnderTest } from '../conformance/store.ts';
import { sampleTime } from '../samples/studies.ts';
import { openBrowserStore } from '../../src/store/browser/browserStore.ts';
import { newId } from '../../src/web/state/newId.ts';
import type { WriterAsked, WriterSaid } from './writer.ts';

/** The store that a browser keeps, in the browser; programs of their own are threads of this page, which can be ended at any moment. */
const make = (): Promise<EngineUnderTest> => {
  const name = `conformance ${newId()}`;
  return Promise.resolve({
    open: () => openBrowserStore({ name, openedAt: sampleTime, newId, foldAfter: 5 }),
    startWriter: ({ heard, ...asked }) => {
      const thread = new Worker(new URL('./writer.ts', import.meta.url), { type: 'module' });
      const ended = new Promise<void>((resolve, reject) => {
        thread.onmessage = ({ data }: MessageEvent<WriterSaid>) => {
          if (data.kind === 'kept') heard(data.id);
          else if (data.kind === 'ended') resolve();
          else reject(new Error(data.how));
        };
        thread.onerror = ({ message }) => reject(new Error(`the thread broke: ${message}`));
        ends.set(thread, resolve);
      });
      thread.postMessage({ name, writer: asked } satisfies WriterAsked);
      return {
        ended,
        kill: () => {
          thread.terminate();
          ends.get(thread)?.();
        },
      };
    },
    destroy: () =>
      new Promise((resolve) => {
        const request = indexedDB.deleteDatabase(name);
        request.onsuccess = () => resolve();
        request.onerror = () => resolve();
        request.onblocked = () => resolve();
      }),
  });
};

const ends = new Map<Worker, () => void>();

storeConformance('a browser', make);
listConformance('a browser', make);
takeBackConformance('a browser', make);
