import { describe, expect, it } from 'vitest';
import { readCardOf } from '../../../test/samples/earlier.ts';
import { aStudy } from '../../../test/builders.ts';
import { answerForAim } from '../cutmodel/answerForAim.ts';
import { fit } from '../cutmodel/fit.ts';
import { proposeNextCard } from '../cutmodel/nextCard.ts';
import { answerWithEarlier, nextCardWithEarlier } from './answerWithEarlier.ts';
import { earlierSheetsOf, type EarlierSheet } from './earlierSheet.ts';
import { toCutStudy } from './toCutStudy.ts';

/** Sixty cells of one earlier batch, five boards. */
const sixtyCells = (seed: number): readonly EarlierSheet[] => {
  const read = [1, 2, 3, 4, 5].map((n) =>
    readCardOf(`E${String(n)}`, 100 * seed + n, { level: 1.06, batch: 'autumn' }),
  );
  return earlierSheetsOf(
    aStudy({
      id: `earlier-${String(seed)}`,
      cards: read.map(({ card }) => card),
      events: read.flatMap(({ events }) => events),
    }),
  );
};

/** Twelve cells of the sheet on the bed. */
const present = (seed: number) => {
  const { card, events } = readCardOf('NOWS', 100 * seed + 50, { batch: 'spring' });
  return toCutStudy(aStudy({ cards: [card], events }));
};

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
const relativeSd = ({ mean: m, sd }: { readonly mean: number; readonly sd: number }) => sd / m;

describe('an answer with what earlier sheets taught', () => {
  const cases = [1, 2, 3, 4].map((seed) => ({
    without: answerWithEarlier(present(seed), 'fastest', []),
    leaning: answerWithEarlier(present(seed), 'fastest', sixtyCells(seed)),
  }));

  it('says how much it leans on', () => {
    for (const { without, leaning } of cases) {
      expect(leaning.leansOn).toEqual({ cells: 60, sheets: 5, parts: 0, orders: 0 });
      expect(without.leansOn).toEqual({ cells: 0, sheets: 0, parts: 0, orders: 0 });
    }
  });

  it('knows the scatter a third better by sixty cells of another batch', () => {
    const before = mean(cases.map(({ without }) => relativeSd(without.posterior.sigma)));
    const after = mean(cases.map(({ leaning }) => relativeSd(leaning.posterior.sigma)));
    expect(after).toBeLessThan(0.67 * before);
  });

  it('goes on learning from sheets beyond those that stand in the model', () => {
    const older = [2, 3, 4, 5].flatMap((seed) => sixtyCells(seed));
    const few = cases.map(({ leaning }) => leaning);
    const many = cases.map((_, i) =>
      answerWithEarlier(present(i + 1), 'fastest', [...sixtyCells(i + 1), ...older]),
    );
    expect(many[0]?.leansOn).toEqual({ cells: 300, sheets: 25, parts: 0, orders: 0 });
    const scatter = (answers: typeof few): number =>
      mean(answers.map(({ posterior }) => relativeSd(posterior.sigma)));
    expect(scatter(many)).toBeLessThan(0.85 * scatter(few));
  });

  it('recommends nothing beyond the fastest shape of this very sheet that came out', () => {
    cases.forEach(({ leaning }, i) => {
      const out = present(i + 1).cells.filter(({ grade }) => grade === 'out');
      const fastest = Math.max(...out.map(({ speedMmPerS }) => speedMmPerS));
      expect(leaning.recommended?.speedMmPerS).toBeLessThanOrEqual(fastest);
    });
  });

  it('recommends nothing from earlier sheets alone', () => {
    const unread = toCutStudy(aStudy());
    const { recommended, reason } = answerWithEarlier(unread, 'fastest', sixtyCells(1));
    expect(recommended).toBeNull();
    expect(reason?.code).toBe('nothing-read-yet');
  });

  it('is not lost where earlier batches lie so far apart that the fit does not settle', () => {
    const levels = [0.62, 0.8, 1.05, 1.35, 1.75];
    for (const seed of [1, 2, 3]) {
      const wild = levels.flatMap((level, n) => {
        const { card, events } = readCardOf('WILD', 10 * seed + n, { level });
        return earlierSheetsOf(aStudy({ id: `wild-${String(n)}`, cards: [card], events }));
      });
      const { convergence, recommended } = answerWithEarlier(present(seed), 'fastest', wild);
      expect(convergence.ok).toBe(true);
      expect(recommended).not.toBeNull();
    }
  });

  it('is the plain answer and the plain next card where there is nothing earlier', () => {
    const study = present(1);
    const { leansOn, ...plain } = answerWithEarlier(study, 'gentlest', []);
    expect(plain).toEqual(answerForAim(fit(study), 'gentlest'));
    expect(leansOn.cells).toBe(0);
    const wish = { cellsWanted: 8, settingsAtMost: 4 };
    expect(nextCardWithEarlier(study, wish, [])).toEqual(proposeNextCard(study, wish));
  });

  it('looks for the next card where earlier sheets say', () => {
    const unread = toCutStudy(aStudy());
    const wish = { cellsWanted: 12, settingsAtMost: 6 };
    const spread = (cells: readonly { readonly speedMmPerS: number }[]): number => {
      const speeds = cells.map(({ speedMmPerS }) => speedMmPerS);
      return Math.max(...speeds) / Math.min(...speeds);
    };
    const blind = proposeNextCard(unread, wish);
    const taught = nextCardWithEarlier(unread, wish, sixtyCells(1));
    expect(spread(taught.cells)).toBeLessThan(0.7 * spread(blind.cells));
  });
});
