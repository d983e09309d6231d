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

  it('lies on the board of its twin, whatever the twin’s air, where both may lie on one', () => {
    const study = aStudy({ cards: [twin] });
    expect(firstWish(study, next())).toMatchObject({ sheet: 'card TW1N', batch: 'spring' });
    const apart = { by: 'batch a', with: 'batch b', oneSheet: false };
    expect(firstWish(study, next({ compared: apart })).sheet).toBeUndefined();
    expect(firstWish(study, next({ rungs: rungs.slice(1) })).sheet).toBeUndefined();
    const later = aStudy({ cards: [twin, aCard({ code: 'L8TR' })] });
    expect(firstWish(later, next()).sheet).toBeUndefined();
  });
});
