import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { demoRequest } from '../../test/fixtures/cardRequest.ts';
import type { Card } from '../core/card/card.ts';
import { designCard } from '../core/card/designCard.ts';
import { testShapeNames } from '../core/card/testShapes.ts';
import { parseCardFile, writeCardFile } from './cardFile.ts';

const cardOf = (change: object = {}): Card => {
  const outcome = designCard({ ...demoRequest, ...change });
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value.card;
};
const codeOf = (text: string): string => {
  const outcome = parseCardFile(text);
  return outcome.ok ? 'none' : outcome.problem.code;
};
const text = writeCardFile(cardOf());
/** The file with one text for another, which must be there. */
const changed = (from: string | RegExp, to: string): string => {
  const other = text.replace(from, to);
  expect(other).not.toBe(text);
  return other;
};

describe('a card as a file', () => {
  it('comes back as the same card, whatever it is', () => {
    const requests = fc.record({
      seed: fc.integer({ min: 0, max: 999 }),
      shape: fc.constantFrom(...testShapeNames),
      vary: fc.constantFrom('speed', 'power', 'speed-and-power', 'passes'),
      order: fc.constantFrom('by-rung', 'free'),
      air: fc.constantFrom('pump', 'off', { kPa: 100 }),
      sheetMm: fc.constant([300, 300]),
    });
    fc.assert(
      fc.property(requests, (change) => {
        const card = cardOf(change);
        expect(parseCardFile(writeCardFile(card))).toEqual({ ok: true, value: card });
      }),
      { numRuns: 25 },
    );
  });

  it('says of every cell what it is cut with, and what stands beside it', () => {
    const file: unknown = JSON.parse(text);
    const { cells, rungs } = cardOf();
    const expected = cells.map((cell) => {
      const setting = rungs.find(({ letter }) => letter === cell.rung)?.setting;
      return { ...cell, ...setting, words: `${String(setting?.speedMmPerS)} mm/s 34%` };
    });
    expect(file).toMatchObject({
      version: 1,
      code: 'K7WM',
      cells: expected,
      notchesMm: { 'lower-left': [2, 2] },
    });
  });

  it('names the cell whose setting or words are not its rung’s', () => {
    const speed = String(cardOf().rungs[0]?.setting.speedMmPerS);
    const cellPart = text.indexOf('"cells"');
    const slip = `${text.slice(0, cellPart)}${text.slice(cellPart).replace(`"speedMmPerS": ${speed}`, '"speedMmPerS": 99')}`;
    expect(parseCardFile(slip)).toEqual({
      ok: false,
      problem: { code: 'card-file-cell-differs', params: { cell: 'A1', card: 'K7WM' } },
    });
    expect(codeOf(changed(/"words": "[^"]*"/, '"words": "1 mm/s 34%"'))).toBe(
      'card-file-cell-differs',
    );
  });

  it('is refused where its order or shape was changed, or it is no card at all', () => {
    const swapped = changed(/"A1",\s+"A2"/, '"A2", "A1"');
    expect(codeOf(swapped)).toBe('card-file-part-differs');
    expect(codeOf(changed('"shape": "star"', '"shape": "key"'))).toBe('card-file-part-differs');
    expect(codeOf(changed('"version": 1', '"version": 2'))).toBe('file-version-unknown');
    expect(codeOf('{')).toBe('file-not-json');
    expect(codeOf('[]')).toBe('file-value-wrong-type');
    expect(codeOf(changed('"widthMm"', '"__proto__": {}, "widthMm"'))).not.toBe('none');
  });
});
