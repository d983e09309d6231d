import { describe, expect, it } from 'vitest';

import { sampleKerfTest } from '../../../test/samples/studies.ts';
import { seededRandom } from '../../num/seededRandom.ts';
import { isSameBatch } from '../book/keptStock.ts';
import { kerfAgreement, kerfTestSays, kerfTestsOf } from './kerfTest.ts';

const test = sampleKerfTest('k1', { machineId: 'm1' });

describe('a kerf that is kept', () => {
  it('says what its combs and slots say', () => {
    const told = kerfTestSays(test);
    expect(told.ok && told.value.kerf?.byCombMm).toHaveLength(2);
    expect(told.ok && told.value.joints?.map(({ kind }) => kind)).toEqual([
      ...['press', 'snug', 'slip'],
    ]);
  });

  it('is not kept of a refused material', () => {
    const stock = { ...test.stock, material: 'PVC' };
    expect(kerfTestSays({ ...test, stock })).toMatchObject({
      ok: false,
      problem: { code: 'material-refused' },
    });
  });

  it('belongs to its setting, material, thickness and machine, whatever the batch', () => {
    const { setting, stock } = test;
    const of = (over: object) => kerfTestsOf({ setting, stock, machineId: 'm1', ...over }, [test]);
    expect(of({})).toHaveLength(1);
    expect(of({ stock: { ...stock, material: 'Birch  Plywood', batch: 'autumn' } })).toHaveLength(
      1,
    );
    expect(of({ stock: { ...stock, nominalThicknessMm: 6 } })).toHaveLength(0);
    expect(of({ stock: { ...stock, material: 'poplar plywood' } })).toHaveLength(0);
    expect(of({ setting: { ...setting, speedMmPerS: 3 } })).toHaveLength(0);
    expect(of({ machineId: 'm2' })).toHaveLength(0);
  });

  it('knows another batch from the same, and says nothing where one is not named', () => {
    const stock = { material: 'birch plywood', nominalThicknessMm: 3 };
    expect(isSameBatch({ ...stock, batch: 'Spring' }, { ...stock, batch: 'spring ' })).toBe(true);
    expect(isSameBatch({ ...stock, batch: 'spring' }, { ...stock, batch: 'autumn' })).toBe(false);
    expect(isSameBatch(stock, { ...stock, batch: 'autumn' })).toBeUndefined();
  });

  it('agrees 19 times in 20 with another of the same kerf, and differs where it is far off', () => {
    const random = seededRandom(7);
    const one = () => ({ kerfMm: 0.2 + 0.005 * random.normal(), expandedMm: 0.0098 });
    const agreed = Array.from({ length: 4000 }, () => kerfAgreement(one(), one()).code).filter(
      (code) => code === 'kerf-agrees',
    );
    expect(agreed.length / 4000).toBeGreaterThan(0.94);
    expect(agreed.length / 4000).toBeLessThan(0.96);
    const far = kerfAgreement(one(), { kerfMm: 0.26, expandedMm: 0.0098 });
    expect(far.code).toBe('kerf-differs');
  });
});
