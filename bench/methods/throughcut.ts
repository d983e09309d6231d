import type { CutStudy, StudyCell } from '../../src/core/cutmodel/cutStudy.ts';
import type { Fit } from '../../src/core/cutmodel/fit.ts';
import { answerFrom } from '../../src/core/cutmodel/fitStudy.ts';
import { nextCardFrom } from '../../src/core/cutmodel/nextCard.ts';
import { fitWithEarlier } from '../../src/core/study/answerWithEarlier.ts';
import type { EarlierSheet } from '../../src/core/study/earlierSheet.ts';
import { pickEarlier } from '../../src/core/study/pickEarlier.ts';
import { referenceLengthMm } from '../../src/core/reading/promise.ts';
import { parseCutStudy } from '../../src/formats/studyFile.ts';
import type { SeededRandom } from '../../src/num/seededRandom.ts';
import { thicknessOf } from '../thickness.ts';
import type { VisibleWorkshop } from '../workshop.ts';
import { layoutOf, wantedShare, wantedSurePct, type Limits, type Method } from './method.ts';

/** Cells and settings of each card of the campaign, as shares of what is allowed. */
const cards = [
  { cells: 8, settings: 4 },
  { cells: 8, settings: 4 },
  { cells: 8, settings: 4 },
];

/** Earlier batches of this stock, where the workshop has any: a study as the command line takes it, oldest cells first. */
export const earlierIn = (history: unknown): readonly EarlierSheet[] => {
  if (history === undefined) return [];
  const parsed = parseCutStudy(history);
  if (!parsed.ok) throw new Error(`the workshop's history is not a study: ${parsed.problem.code}`);
  const { cells, stock } = parsed.value;
  const sheets = new Map<string, EarlierSheet>();
  for (const { batch = '', sheet = '', ...cell } of cells) {
    const key = JSON.stringify([batch, sheet]);
    const known = sheets.get(key) ?? {
      of: 'cards',
      batch,
      sheet,
      lastReadAt: new Date(sheets.size * 86_400_000).toISOString(),
      cuts: [],
    };
    const cut = { cell: { ...cell, thicknessMm: cell.thicknessMm ?? stock.thicknessMm }, count: 1 };
    sheets.set(key, { ...known, cuts: [...known.cuts, cut] });
  }
  return pickEarlier([...sheets.values()]);
};

/** The proposed card, three times: what stands behind the answer then. */
export const cutThreeCards = (shop: VisibleWorkshop, random: SeededRandom, limits: Limits): Fit => {
  let study: CutStudy = {
    machine: shop.machine,
    stock: { material: shop.stock.material, thicknessMm: thicknessOf(shop) },
    cells: [],
    tallies: [],
    promise: {
      outOf100: 100 * wantedShare,
      surePct: wantedSurePct,
      partLengthMm: limits.partLengthMm ?? referenceLengthMm,
      for: shop.oneBoard === true ? 'sheet' : 'batch',
    },
    ask: { powerPct: shop.typicalPowerPct },
  };
  const earlier = earlierIn(shop.history);
  const cellsEach = limits.cellsAtMost / 24;
  const settingsEach = limits.settingsAtMost / 12;
  let fitted = fitWithEarlier(study, earlier);
  cards.forEach((card, k) => {
    const proposal = nextCardFrom(fitted, {
      cellsWanted: Math.floor(card.cells * cellsEach),
      settingsAtMost: Math.floor(card.settings * settingsEach),
    });
    // Cut rung by rung, the rungs in random order; the cells of a rung spread over the card.
    const rungs = random.shuffle([...new Set(proposal.cells.map((cell) => cell.rung))]);
    const settings = rungs.flatMap((rung) => proposal.cells.filter((cell) => cell.rung === rung));
    const grades = shop.cutCard(
      layoutOf(shop, settings, random.shuffle(settings.map((_, i) => i))),
    );
    const cells = settings.map(({ powerPct, speedMmPerS, passes }, i): StudyCell => ({
      powerPct,
      speedMmPerS,
      passes,
      sheet: shop.oneBoard === true ? 'the board' : `card ${String(k + 1)}`,
      grade: grades[i] ?? 'stays',
    }));
    study = { ...study, cells: [...study.cells, ...cells] };
    fitted = fitWithEarlier(study, earlier);
  });
  return fitted;
};

/** What a user of the tool does: the proposed card, three times, then the fastest speed that holds. */
export const throughcut: Method = {
  name: 'throughcut',
  play: (shop, random, limits) => ({
    speedMmPerS: answerFrom(cutThreeCards(shop, random, limits)).recommended?.speedMmPerS ?? null,
  }),
};
