import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { systemClock } from '../host/clock.ts';
import { storePlace } from '../host/storePlace.ts';
import { openStore } from '../store/openStore.ts';
import { runPhonesChange, runPhonesList } from './phones.ts';

const before = process.env['THROUGHCUT_DATA'];
let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-phones-cli-'));
  process.env['THROUGHCUT_DATA'] = folder;
});
afterEach(() => {
  vi.restoreAllMocks();
  if (before === undefined) delete process.env['THROUGHCUT_DATA'];
  else process.env['THROUGHCUT_DATA'] = before;
  rmSync(folder, { recursive: true, force: true });
});

const run = async (command: () => Promise<number>) => {
  const printed: string[] = [];
  const write = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    printed.push(String(text));
    return true;
  });
  const code = await command();
  write.mockRestore();
  return { code, text: printed.join(''), said: JSON.parse(printed.join('')) as unknown };
};

it('lists the phones with what each may do, and changes it; what lets one in is not told', async () => {
  const at = systemClock.now();
  const store = await openStore(storePlace(), at);
  const times = { pairedAt: at, lastSeenAt: at };
  await store.phones.change((session) =>
    session.add({ id: 'p1', name: 'bench', role: 'decides', tokenHash: 'secret', ...times }),
  );
  await store.close();
  const phone = { id: 'p1', name: 'bench', role: 'decides', ...times };
  const listed = await run(runPhonesList);
  expect(listed).toMatchObject({ code: 0, said: { version: 1, phones: [phone] } });
  expect(listed.text).not.toContain('secret');
  const changed = await run(() => runPhonesChange('p1', { role: 'reads-and-counts' }));
  expect(changed.said).toEqual({ version: 1, phone: { ...phone, role: 'reads-and-counts' } });
  expect((await run(runPhonesList)).said).toMatchObject({ phones: [{ role: 'reads-and-counts' }] });
  const none = await run(() => runPhonesChange('p2', { name: 'kit' }));
  expect(none).toMatchObject({ code: 2, said: { error: { code: 'phone-not-found' } } });
});
