import { param } from '../../../test/samples/param.ts';
import { describe, expect, it } from 'vitest';
import { aStudy } from '../../../test/builders.ts';
import { readCardOf } from '../../../test/samples/earlier.ts';
import { answerWithEarlier } from '../study/answerWithEarlier.ts';
import { earlierSheetsOf, type EarlierSheet } from '../study/earlierSheet.ts';
import { toCutStudy } from '../study/toCutStudy.ts';

const earlierAt = (level: number): readonly EarlierSheet[] => {
  const read = [1, 2, 3, 4].map((n) =>
    readCardOf(`E${String(n)}`, 40 + n, { level, batch: n < 3 ? 'autumn' : 'winter' }),
  );
  return earlierSheetsOf(
    aStudy({
      id: 'earlier',
      cards: read.map(({ card }) => card),
      events: read.flatMap(({ events }) => events),
    }),
  );
};

const present = () => {
  const { card, events } = readCardOf('NOWS', 77, { batch: 'spring' });
  return toCutStudy(aStudy({ cards: [card], events }));
};

describe('earlier sheets that a new one is held against', () => {
  it('are leant on where the new sheet is as they let expect', () => {
    const { leansOn, warnings } = answerWithEarlier(present(), 'fastest', earlierAt(1.05));
    expect(leansOn.cells).toBe(48);
    expect(warnings.map(({ code }) => code)).not.toContain('earlier-cut-otherwise');
  });

  it('are left where it cuts quite otherwise, and that is said first', () => {
    const study = present();
    const said = answerWithEarlier(study, 'fastest', earlierAt(1.6));
    expect(said.leansOn).toEqual({ cells: 0, sheets: 0, parts: 0, orders: 0 });
    const [first, ...rest] = said.warnings;
    expect(first).toMatchObject({ code: 'earlier-cut-otherwise', params: { way: 'slower' } });
    expect(Number(param(first, 'byPct'))).toBeGreaterThan(25);
    expect(Number(param(first, 'byPct'))).toBeLessThan(50);
    // And the answer is the one without them.
    expect({ ...said, warnings: rest }).toEqual(answerWithEarlier(study, 'fastest', []));
  });
});
