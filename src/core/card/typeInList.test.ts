import { describe, expect, it } from 'vitest';

import { demoRequest } from '../../../test/fixtures/cardRequest.ts';
import type { Card } from './card.ts';
import type { CardRequest } from './cardRequest.ts';
import { designCard } from './designCard.ts';
import { jobSheet } from './jobSheet.ts';
import { typeInList } from './typeInList.ts';

const cardOf = (change: Partial<CardRequest> = {}): Card => {
  const outcome = designCard({ ...demoRequest, ...change });
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value.card;
};

describe('what is typed for a card', () => {
  it('says power once on a ladder, and six speeds', () => {
    const list = typeInList(cardOf());
    expect(list.varies).toEqual(['speedMmPerS']);
    expect(list.same).toEqual(['powerPct', 'minPowerPct', 'passes', 'air']);
    expect(list.groups).toHaveLength(1);
    expect(list.groups[0]?.entries.map(({ label }) => label).join('')).toBe('ABCDEF');
    expect(list.toType).toBe(6);
  });

  it('puts the rungs of one power together where power varies, and of one number of passes', () => {
    const twoWay = typeInList(cardOf({ vary: 'speed-and-power', cellsEach: 1 }));
    expect(twoWay.groups.map(({ entries }) => entries.length)).toEqual([3, 3, 3]);
    for (const { same, entries } of twoWay.groups) {
      expect(same).toEqual(['powerPct', 'minPowerPct']);
      expect(new Set(entries.map(({ setting }) => setting?.powerPct)).size).toBe(1);
    }
    const passes = typeInList(cardOf({ vary: 'passes', sheetMm: [200, 200] }));
    expect(passes.groups.map(({ same }) => same)).toEqual([['passes'], ['passes']]);
  });

  it('has one entry for window and outline, which share a setting and a colour', () => {
    const list = typeInList(cardOf());
    expect(list.before.map(({ label }) => label)).toEqual(['marks']);
    expect(list.after.map(({ label }) => label)).toEqual(['window']);
  });

  it('asks for nothing that the card before already had', () => {
    const card = cardOf();
    expect(typeInList(card, card).toType).toBe(0);
    const next: Card = {
      ...card,
      rungs: card.rungs.map((rung) =>
        rung.letter === 'C' ? { ...rung, setting: { ...rung.setting, speedMmPerS: 40 } } : rung,
      ),
    };
    const list = typeInList(next, card);
    expect(list.toType).toBe(1);
    const changed = list.groups.flatMap(({ entries }) => entries).filter((e) => !e.unchanged);
    expect(changed.map(({ label }) => label)).toEqual(['C']);
  });
});

describe('the job sheet', () => {
  it('names the rung that burns most: the slowest of a ladder', () => {
    const sheet = jobSheet(cardOf());
    const speeds = sheet.card.rungs.map(({ setting }) => setting.speedMmPerS);
    expect(sheet.hottest?.setting.speedMmPerS).toBe(Math.min(...speeds));
  });
});
