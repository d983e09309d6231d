import type { CardRequest, Vary } from '../../core/card/cardRequest.ts';
import { designCard, type DesignedCard } from '../../core/card/designCard.ts';
import type { TestShape } from '../../core/card/testShapes.ts';
import type { FitAnswer } from '../../core/cutmodel/fitAnswer.ts';
import type { Air } from '../../core/machine/air.ts';
import type { Setting } from '../../core/machine/setting.ts';
import type { Outcome } from '../../core/problem.ts';
import { believedChangeover } from '../../core/study/believedChangeover.ts';
import type { Study } from '../../core/study/study.ts';
import { toCutStudy } from '../../core/study/toCutStudy.ts';

/** What a person may wish of a card; the study says the rest. */
export interface CardWish {
  readonly code: string;
  readonly seed: number;
  readonly vary: Vary;
  readonly powerPct: number;
  readonly speedMmPerS?: number;
  readonly rungs?: readonly Setting[];
  readonly settingsAtMost?: number;
  readonly entriesAtMost?: number;
  readonly cellsEach: number;
  readonly shape: TestShape;
  readonly sizeMm: number;
  readonly sheetMm: readonly [widthMm: number, heightMm: number];
  readonly air?: Air;
  readonly scoring?: Setting;
  readonly trusted?: Setting;
  readonly outline?: 'last' | 'none';
  /** Named by a person: cells may drive the tube above its rated current. */
  readonly overdrive?: boolean;
  /** The delivery, and the board of it; a card that names no board has one of its own. */
  readonly batch?: string;
  readonly sheet?: string;
}

/** A piece of waste that most workshops have lying about, and a card that fits a phone. Common practice, no source. */
export const usualOffcutMm = [100, 150] as const;

export const usualWish = (code: string, powerPct: number): CardWish => ({
  code,
  seed: 1,
  vary: 'speed',
  powerPct,
  cellsEach: 2,
  shape: 'star',
  sizeMm: 14,
  sheetMm: usualOffcutMm,
});

/** Designs a card for this study on this page: the picture moves with the wish. */
export const designFor = (
  study: Study,
  wish: CardWish,
  answer: FitAnswer | undefined,
): Outcome<DesignedCard> => {
  const cut = toCutStudy(study);
  const request: CardRequest = {
    ...wish,
    thicknessMm: cut.stock.thicknessMm,
    machine: study.machine,
    believed: believedChangeover(cut, answer),
  };
  return designCard(request);
};
