import type { Card } from '../../../core/card/card.ts';
import { boardOf, boardOfCard } from '../../../core/card/boardOf.ts';
import type { Air } from '../../../core/machine/air.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import { usualOffcutMm } from '../../../core/study/cardRequestKnowing.ts';
import { likelyBoard } from '../../../core/study/likelyBoard.ts';
import type { Study } from '../../../core/study/study.ts';
import { designFor, usualWish, type CardWish } from '../../state/designFor.ts';
import { entriesAtMost } from '../../state/entriesAtMost.ts';
import { newCode } from '../../state/newId.ts';
import { commonPowerPct } from '../../state/newStudy.ts';
import type { NextCard } from '../../state/nextCard.ts';
import { withOptional } from '../../state/withOptional.ts';

/**
 * What a card's screen opens with: as the last card was made, at the power that is run, and the settings handed over.
 * `twinCode`: the card that was made for the other side of a comparison.
 */
export const firstWish = (
  study: Study,
  next: NextCard | undefined,
  twinCode?: string,
): CardWish => {
  const powerPct = study.ask.powerPct ?? study.habit?.powerPct ?? commonPowerPct;
  const last = study.cards.findLast(({ origin }) => origin === 'designed');
  const air = next?.rungs[0]?.air ?? last?.rungs[0]?.setting.air;
  const entries = entriesAtMost();
  const wish: CardWish = {
    ...usualWish(newCode(), powerPct),
    ...(entries === undefined ? {} : { entriesAtMost: entries }),
    ...(last === undefined ? {} : { shape: last.shape, sizeMm: last.sizeMm }),
    ...(last?.scoring === undefined ? {} : { scoring: last.scoring }),
    ...(air === undefined ? {} : { air }),
    ...(last?.trusted === undefined ? {} : { trusted: last.trusted }),
    // A comparison says by itself which of its two cards are to lie on one board.
    ...(next?.compared === undefined ? likelyBoard(study) : boardOf(study.stock)),
  };
  return next === undefined
    ? wish
    : onALargePiece(study, { ...wish, ...handedOver(study, next, twinCode) });
};

/** The settings as they come; those of its twin, and beside it, where that has been made already. */
const handedOver = (study: Study, next: NextCard, twinCode: string | undefined) => {
  const { rungs, cellsEach, batch, compared } = next;
  const twin = study.cards.find(({ code }) => code === twinCode);
  return {
    rungs: twin === undefined ? rungs : settingsOf(twin, rungs[0]?.air),
    ...(cellsEach === undefined ? {} : { cellsEach }),
    ...(twin === undefined ? {} : { cellsEach: Math.round(twin.cells.length / twin.rungs.length) }),
    ...(batch === undefined ? {} : { batch }),
    ...(twin === undefined || compared?.oneSheet !== true ? {} : boardOfCard(twin)),
  };
};

/** A card's settings from slow to fast, with the air of the other condition. */
const settingsOf = (card: Card, air: Air | undefined): readonly Setting[] =>
  card.rungs
    .map(({ setting }): Setting => withOptional(setting, 'air', air))
    .sort((a, b) => a.speedMmPerS - b.speedMmPerS);

/** Pieces of waste from small to large; a card with many cells needs a larger one. */
const largerPieces = [usualOffcutMm, [400, 300], [600, 400]] as const;

const onALargePiece = (study: Study, wish: CardWish): CardWish =>
  [wish, ...largerPieces.map((sheetMm): CardWish => ({ ...wish, sheetMm }))].find(
    (tried) => designFor(study, tried, undefined).ok,
  ) ?? wish;
