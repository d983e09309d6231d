import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readCardOf } from '../../../test/samples/earlier.ts';
import {
  sampleMachine,
  sampleStudy,
  sampleTally,
  sampleTime,
} from '../../../test/samples/studies.ts';
import { done } from '../../core/problem.ts';
import { splitEarlier } from '../../core/study/pickEarlier.ts';
import type { Study } from '../../core/study/study.ts';
import { openSqliteStore } from '../../store/sqliteStore.ts';
import { answerStudy } from './answerStudy.ts';
import { gatherHistory } from './gatherHistory.ts';
import { readWithHistory } from '../shared/history.ts';
import { modelHere } from '../sums/modelHere.ts';
import { openExample } from '../workshop/openExample.ts';
import type { Store } from '../ports/ports.ts';

let folder: string;
let store: Store;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-history-'));
  store = await openSqliteStore({ file: join(folder, 'w.sqlite'), openedAt: sampleTime });
  await store.change(async (session) => {
    await session.insertMachine(sampleMachine());
    await session.insertMachine(sampleMachine('window'));
    return done(undefined);
  });
});
afterEach(async () => {
  await store.close();
  rmSync(folder, { recursive: true, force: true });
});

const stock = (material: string, nominalThicknessMm = 3): Study['stock'] => ({
  material,
  nominalThicknessMm,
  thicknessReadingsMm: [],
});
let touched = 0;
const insert = (...studies: readonly Study[]) =>
  store.change(async (session) => {
    for (const study of studies) {
      touched += 1;
      await session.insertStudy(
        study,
        `2031-06-01T00:00:${String(touched % 60).padStart(2, '0')}Z`,
      );
    }
    return done(undefined);
  });
/** A study with one card, read. */
const readStudy = (id: string, code: string, over: Partial<Study> = {}): Study => {
  const { card, events } = readCardOf(code, code.charCodeAt(3), { batch: 'spring' });
  return sampleStudy(id, { stock: stock('birch plywood'), cards: [card], events, ...over });
};
const present = (over: Partial<Study> = {}): Study => readStudy('now', 'NOW1', over);
const batchesFor = async (id = 'now'): Promise<readonly string[]> => {
  const found = await readWithHistory({ store }, id, {});
  if (!found.ok) throw new Error(found.problem.code);
  return found.value.earlier.map(({ batch }) => batch);
};

describe('what the workshop’s other sheets taught', () => {
  it('is of the same material, however it is written, and never of the study itself', async () => {
    await insert(
      present(),
      readStudy('a', 'AAA1', { stock: stock('3 mm birch ply') }),
      readStudy('b', 'BBB1', { stock: stock('poplar plywood') }),
      readStudy('c', 'CCC1', { stock: stock('MDF') }),
      readStudy('d', 'DDD1', { stock: stock('plywood', 4) }),
      readStudy('e', 'EEE1', { stock: stock('birch plywood', 9) }),
    );
    expect([...(await batchesFor())].sort()).toEqual(['a/spring', 'd/spring']);
  });

  it('keeps batches of different studies apart, though both are called alike', async () => {
    await insert(present(), readStudy('a', 'AAA1'), readStudy('b', 'BBB1'));
    expect(new Set(await batchesFor())).toEqual(new Set(['a/spring', 'b/spring']));
  });

  it('is of the same machine', async () => {
    await insert(
      present(),
      readStudy('a', 'AAA1'),
      readStudy('b', 'BBB1', { machineId: 'window' }),
    );
    expect(await batchesFor()).toEqual(['a/spring']);
  });

  it('is marked where something was changed on the machine since', async () => {
    const changes = [{ id: 'c1', at: '2031-06-01T00:00:00.000Z', what: 'lens' as const }];
    await insert(present(), readStudy('a', 'AAA1'));
    await store.change(async (session) =>
      done(await session.replaceMachine(sampleMachine('machine-1', { changes }))),
    );
    const found = await readWithHistory({ store }, 'now', {});
    const sheets = found.ok ? found.value.earlier : [];
    expect(sheets.map(({ batch, beforeChange }) => [batch.slice(0, 2), beforeChange])).toEqual([
      ['a/', true],
    ]);
    // They teach scatter as beliefs, and do not say where the changeover lies.
    expect(splitEarlier(sheets)).toMatchObject({ inModel: [], older: sheets });
  });

  it('takes orders, and spoilt cells with their reasons', async () => {
    const { card, events } = readCardOf('AAA1', 1);
    const knot = { id: 'k', cardCode: 'AAA1', at: sampleTime, cell: 'A1' } as const;
    await insert(
      present(),
      readStudy('a', 'AAA1', {
        cards: [card],
        events: [...events, { ...knot, kind: 'spoilt', reason: 'knot' }],
        tallies: [sampleTally('t1', { batch: 'spring' })],
      }),
    );
    const found = await readWithHistory({ store }, 'now', {});
    const sheets = found.ok ? found.value.earlier : [];
    expect(sheets.map(({ of }) => of).sort()).toEqual(['cards', 'order']);
    const reasons = sheets.flatMap(({ cuts }) => cuts.flatMap(({ cell }) => cell.spoilt ?? []));
    expect(reasons.sort()).toEqual(['glue-pocket', 'knot']);
  });

  it('takes the sheets last read, whenever their study was touched', async () => {
    const days = ['04', '01', '07', '03', '06', '02', '05'];
    await insert(present());
    for (const [i, at] of days.entries()) {
      const code = `D${at}${String(i)}`;
      const { card, events } = readCardOf(code, i, { at: `2031-05-${at}T08:00:00.000Z` });
      await insert(readStudy(`day-${at}`, code, { cards: [card], events }));
    }
    expect(await batchesFor()).toEqual(
      ['07', '06', '05', '04', '03', '02', '01'].map((at) => `day-${at}/`),
    );
  });

  it('does not mix with the example, either way', async () => {
    const clock = { now: () => '2031-06-02T00:00:00.000Z' };
    const ids = { newId: () => 'x', newCode: () => 'XXXX' };
    await openExample({ store, clock, ids, model: modelHere });
    await insert(present(), readStudy('a', 'AAA1'));
    expect(await batchesFor()).toEqual(['a/spring']);
    expect(await batchesFor('example-plywood')).toEqual([]);
    const wish = { except: 'draft', material: 'birch plywood', thicknessMm: 3 };
    const machineId = 'example-machine';
    const example = await gatherHistory({ store }, { ...wish, machineId, isExample: true });
    expect(example.length).toBeGreaterThan(0);
    expect(example.every(({ batch }) => batch.startsWith('example-plywood/'))).toBe(true);
  });

  it('is in the stored study’s answer, and out of it when it is wished so', async () => {
    await insert(present(), readStudy('a', 'AAA1'), readStudy('b', 'BBB1'));
    const leansOn = async (wish: Parameters<typeof answerStudy>[2]) => {
      const answer = await answerStudy({ store, model: modelHere }, 'now', wish);
      return answer.ok ? answer.value.leansOn : undefined;
    };
    expect(await leansOn({})).toEqual({ cells: 24, sheets: 2, parts: 0, orders: 0 });
    expect(await leansOn({ earlierSheets: 'without' })).toMatchObject({ cells: 0 });
    expect(await leansOn({ earlierSheets: 'with' })).toMatchObject({ cells: 24 });
  });
});
