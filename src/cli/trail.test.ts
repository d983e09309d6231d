import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { z } from 'zod';
import { sampleEntry } from '../../test/samples/studies.ts';
import { removeEntry } from '../app/book/removeEntry.ts';
import { done } from '../core/problem.ts';
import { trailApi } from '../wire/trailApi.ts';
import { runBookChanges, runTakeBack } from './trail.ts';
import { withStore, withStoreToRead } from './withStore.ts';

const before = process.env['THROUGHCUT_DATA'];
let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-trail-'));
  process.env['THROUGHCUT_DATA'] = folder;
});
afterEach(() => {
  vi.restoreAllMocks();
  if (before === undefined) delete process.env['THROUGHCUT_DATA'];
  else process.env['THROUGHCUT_DATA'] = before;
  rmSync(folder, { recursive: true, force: true });
});

/** What a command ends with, and what it prints. */
const run = async (command: () => Promise<number>) => {
  const printed: string[] = [];
  const write = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    printed.push(String(text));
    return true;
  });
  const code = await command();
  write.mockRestore();
  return { code, said: JSON.parse(printed.join('')) as unknown };
};
const changesShape = z.looseObject({ changes: trailApi.listSettingChanges.reply.shape.changes });
const changes = async () => changesShape.parse((await run(runBookChanges)).said).changes;

it('tells what was done to kept settings, and takes it back under the name that is given', async () => {
  expect(await changes()).toEqual([]);
  await withStore(async (ports) => {
    await ports.store.change(async (session) => {
      await session.insertEntry(sampleEntry('b1'));
      return done(undefined);
    });
    await removeEntry({ ...ports, by: 'Ada' }, 'b1');
  });
  const [removed] = await changes();
  expect(removed).toMatchObject({ change: { by: 'Ada' }, mayTakeBack: true });
  const id = removed?.change.id ?? '';
  const undone = await run(() => runTakeBack(id, { by: ' Bo\n' }));
  expect(undone).toMatchObject({ code: 0, said: { change: { by: 'Bo', undoes: id } } });
  const kept = await withStoreToRead(({ store }) => store.read((session) => session.entry('b1')));
  expect(kept).toEqual(sampleEntry('b1'));
  const nothing = await run(() => runTakeBack('nothing', {}));
  expect(nothing).toMatchObject({
    code: 2,
    said: { error: { code: 'setting-change-not-found' } },
  });
});
