import { cardDrawing } from '../src/core/card/cardDrawing.ts';
import { designCard } from '../src/core/card/designCard.ts';
import { writeSvg } from '../src/formats/svg/writeSvg.ts';

const designed = designCard({
  code: 'K7PX',
  vary: 'speed',
  powerPct: 34,
  cellsEach: 4,
  settingsAtMost: 6,
  shape: 'star',
  sizeMm: 14,
  sheetMm: [160, 120],
  thicknessMm: 3,
  machine: { maxPowerPct: 90, speedRangeMmPerS: [1, 100] },
  believed: () => ({ v50MmPerS: 17, lnSd: 0.3 }),
  seed: 1,
});

/** Draws and writes a card of 24 cells, the way every export does. */
export const cardToSvg = (): string => {
  if (!designed.ok) throw new Error(designed.problem.code);
  return writeSvg(cardDrawing(designed.value.card), 'bench');
};
