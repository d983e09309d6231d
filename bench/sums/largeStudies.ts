import type { CutStudy, StudyCell } from '../../src/core/cutmodel/cutStudy.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { drawCard, drawStudy, drawTruth } from '../explain/drawStudy.ts';

/** What there is so much of. */
export type Many = 'cells' | 'contradictory cells' | 'sheets' | 'counts';

const batchesOf = 11;

/** Cells that no order of speeds explains: who came out has nothing to do with how fast. */
const contradictory = (count: number): readonly StudyCell[] =>
  Array.from({ length: count }, (_, i): StudyCell => ({
    powerPct: 20 + ((i * 7) % 50),
    speedMmPerS: 5 + ((i * 13) % 60),
    passes: 1,
    sheet: `A-${String(i % 7)}`,
    batch: `B-${String(i % batchesOf)}`,
    grade: (['out', 'stays', 'hangs'] as const)[(i * 31) % 3] ?? 'out',
  }));

/** A study with so many of one thing, as a workshop of the model's own kind would bring it. */
export const largeStudy = (many: Many, count: number, seed: number): CutStudy => {
  const random = seededRandom(seed);
  if (many === 'contradictory cells') return { ...drawStudy(contradictory(count)), ask: {} };
  const truth = drawTruth(random);
  const batches = Array.from({ length: batchesOf }, () => truth.batchSd * random.normal());
  const cards = (sheets: number, cells: number): readonly StudyCell[] =>
    Array.from({ length: sheets }, (_, i) => {
      const batch = i % batchesOf;
      return drawCard(
        truth,
        {
          cells,
          batch: `B-${String(batch)}`,
          sheet: `S-${String(i)}`,
          batchEffect: batches[batch] ?? 0,
        },
        random,
      );
    }).flat();
  switch (many) {
    case 'cells':
      return drawStudy(cards(Math.ceil(count / 250), 250).slice(0, count));
    case 'sheets':
      return drawStudy(cards(count, 6));
    case 'counts': {
      const study = drawStudy(cards(2, 12));
      const speedMmPerS = 0.75 * Math.exp(truth.lnV50);
      return {
        ...study,
        tallies: Array.from({ length: count }, (_, i) => {
          const parts = 30;
          const spoilt = random.uniform() < 0.05 ? 1 : 0;
          const hangs = random.uniform() < 0.1 ? 1 + random.integer(3) : 0;
          return {
            setting: { powerPct: 30, speedMmPerS: Number(speedMmPerS.toFixed(1)), passes: 1 },
            batch: `B-${String(i % batchesOf)}`,
            sheet: `T-${String(i)}`,
            out: parts - spoilt - hangs,
            hangs,
            stays: 0,
            spoilt,
            partLengthMm: 160,
          };
        }),
      };
    }
  }
};
