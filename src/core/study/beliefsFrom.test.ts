import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import { aStudy } from '../../../test/builders.ts';
import { readCardOf } from '../../../test/samples/earlier.ts';
import { beliefsAfter } from '../cutmodel/beliefsAfter.ts';
import { beliefsFrom } from './beliefsFrom.ts';
import { earlierSheetsOf, type EarlierSheet } from './earlierSheet.ts';
import { historyOf } from './historyOf.ts';

const sheetsOf = (seed: number): readonly EarlierSheet[] =>
  [1, 2, 3].flatMap((n) => {
    const { card, events } = readCardOf('OLDS', 10 * seed + n, { batch: `batch ${String(n)}` });
    return earlierSheetsOf(aStudy({ id: `s${String(n)}`, cards: [card], events }));
  });

describe('what older sheets taught', () => {
  const study = plainStudy({ ask: { powerPct: 30 } });

  it('is learnt from the oldest on', () => {
    const newestFirst = sheetsOf(1);
    const oldestFirst = [...newestFirst].reverse().map((sheet) => historyOf([sheet]));
    expect(beliefsFrom(study, newestFirst)).toEqual(beliefsAfter(study, oldestFirst));
  });

  it('is learnt once, however the sheets arrive and whatever is asked of them', () => {
    const first = beliefsFrom(study, sheetsOf(2));
    const copied = structuredClone(sheetsOf(2));
    expect(beliefsFrom(plainStudy({ ask: { powerPct: 40 } }), copied)).toBe(first);
  });

  it('is another for other sheets and another sheet’s thickness', () => {
    const one = beliefsFrom(study, sheetsOf(3));
    expect(beliefsFrom(study, sheetsOf(4))).not.toEqual(one);
    const thicker = { ...study, stock: { ...study.stock, thicknessMm: 5 } };
    expect(beliefsFrom(thicker, sheetsOf(3))).not.toBe(one);
  });

  it('is forgotten after some others, and then the same again', () => {
    const first = beliefsFrom(study, sheetsOf(5));
    for (const seed of [6, 7, 8, 9, 10, 11]) beliefsFrom(study, sheetsOf(seed));
    const again = beliefsFrom(study, sheetsOf(5));
    expect(again).toEqual(first);
    expect(again).not.toBe(first);
  });
});
