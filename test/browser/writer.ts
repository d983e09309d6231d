/// <reference lib="webworker" />
import { done } from '../../src/core/problem.ts';
import { openBrowserStore } from '../../src/store/browser/browserStore.ts';
import { newId } from '../../src/web/state/newId.ts';

declare const self: DedicatedWorkerGlobalScope;

export interface WriterAsked {
  readonly name: string;
  readonly writer: { readonly studyId: string; readonly name: string; readonly count: number };
}

export type WriterSaid =
  | { readonly kind: 'kept'; readonly id: string }
  | { readonly kind: 'ended' }
  | { readonly kind: 'broke'; readonly how: string };

const at = '2031-05-06T07:08:09.000Z';
const say = (said: WriterSaid): void => self.postMessage(said);

/** A program of its own that appends events to a store, one a session, and says each one once it is acknowledged. */
const write = async ({ name, writer }: WriterAsked): Promise<void> => {
  const store = await openBrowserStore({ name, openedAt: at, newId, foldAfter: 5 });
  for (let i = 0; i < writer.count; i += 1) {
    const id = `${writer.name}${String(i)}`;
    await store.change(async (session) =>
      done(
        await session.appendEvents(writer.studyId, [
          { id, cardCode: 'K7QX', at, kind: 'graded', cell: 'A1', grade: 'out' },
        ]),
      ),
    );
    say({ kind: 'kept', id });
  }
  await store.close();
  say({ kind: 'ended' });
};

self.addEventListener('message', ({ data }: MessageEvent<WriterAsked>) => {
  write(data).catch((thrown: unknown) => say({ kind: 'broke', how: String(thrown) }));
});
