import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  sampleEntry,
  sampleMetering,
  sampleStudy,
  sampleTime,
} from '../../test/samples/studies.ts';
import { undescribedMachine, type Machine } from '../core/machine/machine.ts';
import { exampleMachine } from '../core/virtual/exampleMachine.ts';
import { soughtIn } from '../core/search/sought.ts';
import { migrations } from './migrations/all.ts';
import { openSqliteStore } from './sqliteStore.ts';

let folder: string;
let file: string;
let old: Database.Database;
/** A store as the third schema made it: by the very steps that made it then. */
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-machines-'));
  file = join(folder, 'workshop.sqlite');
  old = new Database(file);
  old.exec(
    'create table schema_step (number integer primary key, name text not null, applied_at text not null)',
  );
  for (const { number, name, statements } of migrations.filter((step) => step.number < 4)) {
    for (const statement of statements) old.exec(statement);
    old.prepare('insert into schema_step values (?, ?, ?)').run(number, name, sampleTime);
  }
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const addStudy = (id: string, day: number, machine: Partial<Machine>, isExample = 0): void => {
  const { stock, promise, aim, ask } = sampleStudy(id);
  const at = `2031-05-${String(day).padStart(2, '0')}T00:00:00.000Z`;
  old
    .prepare('insert into study values (?, ?, ?, ?, 3, ?, ?, ?, ?, ?, null)')
    .run(
      id,
      isExample,
      at,
      at,
      JSON.stringify(stock),
      JSON.stringify({ ...undescribedMachine, ...machine }),
      JSON.stringify(promise),
      aim,
      JSON.stringify(ask),
    );
};
const addEntry = (id: string, machine?: string): void => {
  const entry = sampleEntry(id);
  const named = machine === undefined ? {} : { machine };
  const body = JSON.stringify({ ...entry, holdsFor: { ...entry.holdsFor, ...named } });
  old
    .prepare('insert into proven_setting values (?, ?, 0, ?, ?, ?)')
    .run(id, id, sampleTime, 'gone', body);
};
let position = 0;
const addMetering = (id: string, machine?: string): void => {
  position += 1;
  const body = JSON.stringify(sampleMetering(id, machine === undefined ? {} : { machine }));
  old
    .prepare('insert into machine_test values (?, ?, ?, ?, ?, 0)')
    .run(id, position, 'metering', sampleTime, body);
};

/** What the present program finds there. */
const found = async () => {
  old.close();
  const store = await openSqliteStore({ file, openedAt: sampleTime });
  const all = await store.read(async (session) => ({
    machines: await session.machines(),
    machineOf: Object.fromEntries(
      (await session.summaries()).map(({ id, machineId }) => [id, machineId]),
    ),
    entries: (await session.entries()).map(({ id, holdsFor }) => [id, holdsFor.machineId]),
    meterings: (await session.machineTests('metering')).map(({ id, machineId }) => [id, machineId]),
  }));
  await store.close();
  return all;
};
const plain = (machines: Awaited<ReturnType<typeof found>>['machines']) =>
  machines.map(({ id, isDefault, machine }) => [id, isDefault, machine]);

describe('a store from before machines were things of their own', () => {
  it('without anything has no machine', async () => {
    expect((await found()).machines).toEqual([]);
  });

  it('has one machine, of which each figure is the newest that somebody said', async () => {
    const tubePoints = [{ powerPct: 20, currentMa: 5 }];
    addStudy('old', 1, { name: 'Door', ratedCurrentMa: 24, maxPowerPct: 80 });
    addStudy('middle', 2, { name: 'door ', tubePoints, maxPowerPct: 62 });
    addStudy('new', 3, {});
    addEntry('B1B1', 'door');
    addMetering('m1');
    const { machines, machineOf, entries, meterings } = await found();
    expect(plain(machines)).toEqual([
      [
        'machine-new',
        true,
        { ...undescribedMachine, name: 'door', ratedCurrentMa: 24, tubePoints, maxPowerPct: 62 },
      ],
    ]);
    expect(machines[0]?.addedAt).toBe('2031-05-01T00:00:00.000Z');
    const id = 'machine-new';
    expect(machineOf).toEqual({ old: id, middle: id, new: id });
    expect(entries).toEqual([['B1B1', id]]);
    expect(meterings).toEqual([['m1', id]]);
  });

  it('keeps machines of different names apart, and one for what names none', async () => {
    addStudy('a', 1, { name: 'door', maxPowerPct: 60 });
    addStudy('b', 3, { name: 'window', maxPowerPct: 70 });
    addStudy('c', 2, { ratedCurrentMa: 20 });
    addMetering('m1', 'Window');
    addEntry('B1B1', 'sold long ago');
    const { machines, machineOf, entries, meterings } = await found();
    expect(plain(machines)).toEqual([
      ['machine-b', true, { ...undescribedMachine, name: 'window', maxPowerPct: 70 }],
      ['machine-c', false, { ...undescribedMachine, ratedCurrentMa: 20 }],
      ['machine-a', false, { ...undescribedMachine, name: 'door', maxPowerPct: 60 }],
      ['machine-B1B1', false, { ...undescribedMachine, name: 'sold long ago' }],
    ]);
    expect(machineOf).toEqual({ a: 'machine-a', b: 'machine-b', c: 'machine-c' });
    expect(entries).toEqual([['B1B1', 'machine-B1B1']]);
    expect(meterings).toEqual([['m1', 'machine-b']]);
  });

  it('leaves out what a sheet took over from the example’s invented machine', async () => {
    addStudy('own', 2, { ...exampleMachine, maxPowerPct: 55 });
    addStudy('renamed', 1, { ...exampleMachine, name: 'mine' });
    addStudy('example-plywood', 3, exampleMachine, 1);
    const { machines, machineOf } = await found();
    expect(plain(machines)).toEqual([
      ['machine-own', true, { ...undescribedMachine, name: 'mine', maxPowerPct: 55 }],
      ['example-machine', false, exampleMachine],
    ]);
    expect(machines.map(({ isExample }) => isExample)).toEqual([false, true]);
    expect(machineOf['renamed']).toBe('machine-own');
  });

  it('opens though a sheet’s machine cannot be read: it is to be described again', async () => {
    addStudy('s1', 1, { name: 'door' });
    old.exec(`update study set machine = '{"maxPowerPct":400}'`);
    expect(plain((await found()).machines)).toEqual([['machine-s1', true, undescribedMachine]]);
  });

  it('is searched and narrowed as a new one is; what cannot be read stands in the whole list', async () => {
    addStudy('s1', 1, { name: 'door' });
    addStudy('s2', 2, { name: 'door' });
    old.exec(`update study set stock = '{' where id = 's2'`);
    addEntry('B1B1', 'door');
    addEntry('B2B2');
    old.exec(`update proven_setting set body = '{' where id = 'B2B2'`);
    old.close();
    const store = await openSqliteStore({ file, openedAt: sampleTime });
    await store.read(async (session) => {
      const sheets = (text: string) => session.listSheets({ sought: soughtIn(text) });
      expect((await sheets('birch door 3.15 mm')).found.map(({ id }) => id)).toEqual(['s1']);
      expect(await sheets('')).toMatchObject({ found: [{ id: 's1' }], total: 2 });
      const kept = (text: string) => session.listEntries({ sought: soughtIn(text) });
      expect((await kept('door bk42 3 mm')).found.map(({ id }) => id)).toEqual(['B1B1']);
      expect(await kept('')).toMatchObject({ found: [{ id: 'B1B1' }], total: 2 });
      expect(session.passedOver().map(({ params }) => params['id'])).toEqual(['s2', 'B2B2']);
    });
    await store.close();
  });
});
