import { describe, expect, it } from 'vitest';
import { aCard, aStudy } from '../../../../test/builders.ts';
import type { NextCard } from '../../state/nextCard.ts';
import { designFor } from '../../state/designFor.ts';
import { firstWish } from './firstWish.ts';

const rungs = [14, 15, 16, 17, 18].map((speedMmPerS) => ({ powerPct: 30, speedMmPerS, passes: 1 }));
const next = (over: Partial<NextCard> = {}): NextCard => ({
  rungs,
  cellsEach: 20,
  compared: { by: 'the first lens', with: 'the other lens', oneSheet: true },
  ...over,
});
const twin = aCard({
  code: 'TW1N',
  batch: 'spring',
  rungs: rungs.map((setting, i) => ({
    letter: 'ABCDE'[i] ?? '',
    setting: { ...setting, air: 'pump' },
  })),
});

describe('what a card’s screen opens with', () => {
  it('has a board of its own, of the study’s delivery', () => {
    const stock = { ...aStudy().stock, batch: 'spring' };
    const wish = firstWish(aStudy({ stock, cards: [aCard()] }), undefined);
    expect(wish.batch).toBe('spring');
    expect(wish.sheet).toBeUndefined();
  });

  it('takes over settings, cells and batch, on a piece that is large enough', () => {
    const study = aStudy();
    const wish = firstWish(study, next({ batch: 'autumn' }));
    expect(wish).toMatchObject({ rungs, cellsEach: 20, batch: 'autumn' });
    const designed = designFor(study, wish, undefined);
    expect(designed.ok && designed.value.card.cells).toHaveLength(100);
    expect(designed.ok && designed.value.card.batch).toBe('autumn');
  });

  it('has the settings of its twin with its own air, on the twin’s board where both may lie on one', () => {
    const study = aStudy({ cards: [twin] });
    const moved = rungs.slice(1).map((setting) => ({ ...setting, air: 'off' as const }));
    const wish = firstWish(study, next({ rungs: moved }), 'TW1N');
    expect(wish).toMatchObject({ sheet: 'card TW1N', batch: 'spring', air: 'off' });
    expect(wish.rungs).toEqual(rungs.map((setting) => ({ ...setting, air: 'off' })));
    expect(wish.cellsEach).toBe(Math.round(twin.cells.length / twin.rungs.length));
    const apart = { by: 'batch a', with: 'batch b', oneSheet: false };
    expect(firstWish(study, next({ compared: apart }), 'TW1N').sheet).toBeUndefined();
    expect(firstWish(study, next()).sheet).toBeUndefined();
    expect(firstWish(study, next(), 'GONE')).toMatchObject({ rungs, cellsEach: 20 });
  });
});
