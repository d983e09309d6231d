import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { sampleTime } from '../../test/samples/studies.ts';
import { openStore } from '../store/openStore.ts';
import { takeInPhonesFile } from './takeInPhonesFile.ts';

it('takes phones of an earlier version in once; a file that is none lets nobody in', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'throughcut-phones-'));
  const file = join(folder, 'phones.json');
  const store = await openStore({ kind: 'file', file: join(folder, 'w.sqlite') }, sampleTime);
  const phone = {
    id: '0a1b',
    name: 'bench',
    tokenHash: 'f00d',
    pairedAt: sampleTime,
    lastSeenAt: sampleTime,
  };
  const taken = () => store.phones.read((session) => session.phones());
  try {
    await takeInPhonesFile(folder, store.phones);
    expect(await taken()).toEqual([]);
    for (let twice = 0; twice < 2; twice += 1) {
      writeFileSync(file, JSON.stringify({ version: 1, phones: [phone] }));
      await takeInPhonesFile(folder, store.phones);
      expect(await taken()).toEqual([{ ...phone, role: 'runs-the-place' }]);
      expect(existsSync(file)).toBe(false);
    }
    writeFileSync(file, '{"version":1,"phones":[{"id":');
    await takeInPhonesFile(folder, store.phones);
    expect(await taken()).toEqual([{ ...phone, role: 'runs-the-place' }]);
  } finally {
    await store.close();
    rmSync(folder, { recursive: true, force: true });
  }
});
