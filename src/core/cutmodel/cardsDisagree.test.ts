import { param } from '../../../test/samples/param.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import type { Grade } from '../reading/grade.ts';
import { cardsDisagree, mostApart } from './cardsDisagree.ts';
import { fit } from './fit.ts';
import { fitStudy } from './fitStudy.ts';

/** Four cells at each of six speeds 8 % apart; the changeover lies between the third and the fourth. */
const card = (sheet: string, level = 1, batch?: string) =>
  [-2.5, -1.5, -0.5, 0.5, 1.5, 2.5].flatMap((step, rung) => {
    const grades: readonly Grade[] =
      rung < 2
        ? ['out', 'out', 'out', 'out']
        : rung === 2
          ? ['out', 'out', 'out', 'hangs']
          : rung === 3
            ? ['out', 'hangs', 'hangs', 'stays']
            : ['stays', 'stays', 'stays', 'stays'];
    return grades.map((grade) => ({
      powerPct: 30,
      speedMmPerS: 17 * level * Math.exp(0.08 * step),
      grade,
      sheet,
      ...(batch === undefined ? {} : { batch }),
    }));
  });
type Card = ReturnType<typeof card>;
const studyOf = (...cards: readonly Card[]) =>
  plainStudy({ cells: cards.flat(), ask: { powerPct: 30 } });

describe('cardsDisagree', () => {
  it('names the card that cuts a quarter slower, and by how much', () => {
    const said = cardsDisagree(fit(studyOf(card('first'), card('second', 0.75))));
    expect(said).toMatchObject({ odd: 'second', others: ['first'] });
    // Planted: ln 0.75 = −0.288; the level of a card of its own is drawn somewhat towards the others.
    expect(said?.fasterBy).toBeGreaterThan(-0.33);
    expect(said?.fasterBy).toBeLessThan(-0.2);
  });

  it('names the odd one of three, wherever it stands', () => {
    const said = cardsDisagree(fit(studyOf(card('a'), card('b', 1.3), card('c'))));
    expect(said).toMatchObject({ odd: 'b', others: ['a', 'c'] });
    expect(said?.fasterBy).toBeGreaterThan(0.15);
  });

  it('says nothing of cards that cut alike, nor of one card, nor of cards of different batches', () => {
    expect(cardsDisagree(fit(studyOf(card('a'), card('b'))))).toBeNull();
    expect(mostApart(fit(studyOf(card('a', 0.75))))).toBeNull();
    expect(mostApart(fit(studyOf(card('a', 1, 'one'), card('b', 0.75, 'two'))))).toBeNull();
  });

  it('does not take a few loose cells for a card', () => {
    const loose = card('b', 0.7).slice(0, 5);
    expect(mostApart(fit(studyOf(card('a'), loose)))).toBeNull();
  });

  it('is warned of in the answer, before what the card could not tell', () => {
    const { warnings } = fitStudy(studyOf(card('card K7QX'), card('card M2TB', 0.75)));
    expect(warnings[0]?.code).toBe('cards-disagree');
    expect(warnings[0]?.params).toMatchObject({ odd: 'card M2TB', way: 'slower' });
    expect(param(warnings[0], 'byPct')).toBeGreaterThanOrEqual(18);
  });

  it('finds a wider gap the likelier, whichever way it goes', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.15, noNaN: true }), fc.boolean(), (gap, slower) => {
        const oddsAt = (ln: number) =>
          mostApart(fit(studyOf(card('a'), card('b', Math.exp(slower ? -ln : ln)))))?.odds ?? 0;
        expect(oddsAt(gap + 0.12)).toBeGreaterThan(oddsAt(gap));
      }),
      { numRuns: 2 },
    );
  });
});
