import type { Card } from '../../../core/card/card.ts';
import { sheetOfCard } from '../../../core/card/sheetOfCard.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import { usualOffcutMm } from '../../../core/study/cardRequestFor.ts';
import type { Study } from '../../../core/study/study.ts';
import { designFor, usualWish, type CardWish } from '../../state/designFor.ts';
import { entriesAtMost } from '../../state/entriesAtMost.ts';
import { newCode } from '../../state/newId.ts';
import { commonPowerPct } from '../../state/newStudy.ts';
import type { NextCard } from '../../state/nextCard.ts';

/** What a card's screen opens with: as the last card was made, at the power that is run, and the settings handed over. */
export const firstWish = (study: Study, next: NextCard | undefined): CardWish => {
  const powerPct = study.ask.powerPct ?? study.habit?.powerPct ?? commonPowerPct;
  const last = study.cards.findLast(({ origin }) => origin === 'designed');
  const air = next?.rungs[0]?.air ?? last?.rungs[0]?.setting.air;
  const entries = entriesAtMost();
  const { batch, sheet } = study.stock;
  const wish: CardWish = {
    ...usualWish(newCode(), powerPct),
    ...(entries === undefined ? {} : { entriesAtMost: entries }),
    ...(last === undefined ? {} : { shape: last.shape, sizeMm: last.sizeMm }),
    ...(last?.scoring === undefined ? {} : { scoring: last.scoring }),
    ...(air === undefined ? {} : { air }),
    ...(last?.trusted === undefined ? {} : { trusted: last.trusted }),
    ...(batch === undefined ? {} : { batch }),
    ...(sheet === undefined ? {} : { sheet }),
  };
  return next === undefined ? wish : onALargePiece(study, { ...wish, ...handedOver(study, next) });
};

/** The settings as they come; beside its twin where that has been made already. */
const handedOver = (study: Study, { rungs, cellsEach, batch, compared }: NextCard) => {
  const twin = compared?.oneSheet === true ? twinOf(study, rungs) : undefined;
  return {
    rungs,
    ...(cellsEach === undefined ? {} : { cellsEach }),
    ...(batch === undefined ? {} : { batch }),
    ...(twin === undefined ? {} : boardOf(twin)),
  };
};

const boardOf = (card: Card): Pick<CardWish, 'batch' | 'sheet'> => ({
  ...(card.batch === undefined ? {} : { batch: card.batch }),
  sheet: sheetOfCard(card),
});

/** The card that was made last, where it has the same settings but for the air. */
const twinOf = ({ cards }: Study, rungs: readonly Setting[]): Card | undefined => {
  const last = cards.at(-1);
  if (last?.origin !== 'designed') return undefined;
  const wanted = new Set(rungs.map(settingWithoutAir));
  const made = new Set(last.rungs.map(({ setting }) => settingWithoutAir(setting)));
  return wanted.size === made.size && [...wanted].every((setting) => made.has(setting))
    ? last
    : undefined;
};

const settingWithoutAir = ({ powerPct, speedMmPerS, passes, minPowerPct }: Setting): string =>
  [powerPct, speedMmPerS, passes, minPowerPct ?? ''].join('/');

/** Pieces of waste from small to large; a card with many cells needs a larger one. */
const largerPieces = [usualOffcutMm, [400, 300], [600, 400]] as const;

const onALargePiece = (study: Study, wish: CardWish): CardWish =>
  [wish, ...largerPieces.map((sheetMm): CardWish => ({ ...wish, sheetMm }))].find(
    (tried) => designFor(study, tried, undefined).ok,
  ) ?? wish;
