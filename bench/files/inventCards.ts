import type { Card } from '../../src/core/card/card.ts';
import type { CardRequest, Vary } from '../../src/core/card/cardRequest.ts';
import { designCard } from '../../src/core/card/designCard.ts';
import { testShapeNames } from '../../src/core/card/testShapes.ts';
import type { Air } from '../../src/core/machine/air.ts';
import { seededRandom, type SeededRandom } from '../../src/num/seededRandom.ts';

const questions: readonly Vary[] = ['speed', 'power', 'speed-and-power', 'passes', 'corners'];
const airs: readonly (Air | undefined)[] = [undefined, 'off', 'pump', { kPa: 80 }];

/** Cards of many kinds for invented stocks: every question, shape, size and air, with and without outline. */
export const inventCards = (count: number, seed: number): readonly Card[] => {
  const random = seededRandom(seed);
  const cards: Card[] = [];
  // Now and then a card does not fit its sheet or machine: then another one is drawn.
  for (let tried = 0; cards.length < count && tried < 20 * count; tried += 1) {
    const designed = designCard(inventRequest(random, tried));
    if (designed.ok) cards.push(designed.value.card);
  }
  return cards;
};

/** Four signs, each card its own. */
const codeOf = (i: number): string => `K${String(i).padStart(3, '0')}`;

const inventRequest = (random: SeededRandom, i: number): CardRequest => {
  const between = (low: number, high: number): number => low + (high - low) * random.uniform();
  const powerPct = 20 + random.integer(50);
  const v50 = between(6, 40);
  const thicknessMm = Number(between(1.5, 6).toFixed(2));
  const air = airs[(i + random.integer(2)) % airs.length];
  return {
    code: codeOf(i),
    vary: questions[i % questions.length] ?? 'speed',
    powerPct,
    cellsEach: 1 + random.integer(3),
    settingsAtMost: 3 + random.integer(5),
    shape: testShapeNames[Math.floor(i / questions.length) % testShapeNames.length] ?? 'star',
    sizeMm: Number(between(10, 20).toFixed(1)),
    sheetMm: [300, 200],
    thicknessMm,
    machine: {
      maxPowerPct: 90,
      speedRangeMmPerS: [1, 300],
      bed: { widthMm: 600, heightMm: 400 },
      ...(random.uniform() < 0.5 ? { powerRampStartMmPerS: 5 } : {}),
    },
    believed: (power) => ({ v50MmPerS: (v50 * power) / powerPct, lnSd: 0.3 }),
    seed: random.integer(1e6),
    ...(air === undefined ? {} : { air }),
    ...(random.uniform() < 0.3
      ? {}
      : {
          trusted: {
            powerPct,
            speedMmPerS: Number((v50 * 0.6).toFixed(1)),
            passes: 1,
            ...(air === undefined ? {} : { air }),
          },
        }),
    ...(random.uniform() < 0.5 ? {} : { scoring: { powerPct: 10, speedMmPerS: 120, passes: 1 } }),
    ...(random.uniform() < 0.3 ? { order: 'free' as const } : {}),
    outline: random.uniform() < 0.8 ? 'last' : 'none',
  };
};
