import { problemOf } from '../core/problem.ts';
import { describe, expect, it } from 'vitest';
import { fit } from '../core/cutmodel/fit.ts';
import { orderAnswer } from '../core/order/orderAnswer.ts';
import { orderFile } from './orderFile.ts';
import { parseCutStudy } from './studyFile.ts';

const study = (order: unknown, cells: readonly unknown[] = []) => ({
  version: 1,
  stock: { material: 'plywood', thicknessMm: 3 },
  cells,
  order,
});
const cells = [12, 14, 16, 18, 20, 22].flatMap((speedMmPerS) =>
  [1, 2].map(() => ({ powerPct: 34, speedMmPerS, grade: speedMmPerS < 17 ? 'out' : 'stays' })),
);
const ofBoard = problemOf('material-caution', { judged: 'mdf-board' });
const say = ({ code }: { code: string }) => ({ code, message: `says ${code}` });

describe('an order in a study file', () => {
  it('is read, asked and printed', () => {
    const parsed = parseCutStudy(study({ parts: 60, cost: { knifeSeconds: 90 } }, cells));
    if (!parsed.ok || parsed.value.order === undefined) throw new Error('not read');
    const file = orderFile(orderAnswer(fit(parsed.value), parsed.value.order), [], say);
    expect(file).toMatchObject({
      version: 1,
      order: { parts: 60, partsPerSheet: 60, partLengthMm: 60 },
      assumed: { knifeSeconds: 90, perHour: 20 },
    });
    expect(JSON.parse(JSON.stringify(file))).toEqual(file);
  });

  it('has an answer where nothing is recommended: none, with its reason', () => {
    const parsed = parseCutStudy(study({ parts: 60 }));
    if (!parsed.ok || parsed.value.order === undefined) throw new Error('not read');
    expect(orderFile(orderAnswer(fit(parsed.value), parsed.value.order), [ofBoard], say)).toEqual({
      version: 1,
      chosen: null,
      reason: { code: 'nothing-read-yet', message: 'says nothing-read-yet' },
      warnings: [{ code: 'material-caution', message: 'says material-caution' }],
    });
  });

  it('is refused where its figures cannot be', () => {
    for (const order of [
      {},
      { parts: 0 },
      { parts: 2.5 },
      { parts: 9, setting: { powerPct: 3 } },
    ]) {
      expect(parseCutStudy(study(order)).ok).toBe(false);
    }
  });
});
