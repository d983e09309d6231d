import { stockThicknessMm } from '../core/stock/stockThickness.ts';
import { systemClock } from '../host/clock.ts';
import type { DrawReasoning } from '../http/reasoningFile.ts';
import { inventedText } from '../words/en/invented.ts';
import { version } from './version.ts';

/** The page of reasons of a stored study; printing is loaded when it is first asked for. */
export const reasoningFile: DrawReasoning = async ({ study, cut, explanation }) => {
  const { reasoningPdf } = await import('../print/reasoningPdf.ts');
  return reasoningPdf(cut, explanation, {
    stock: inventedText.stock(
      `${String(stockThicknessMm(study.stock))} mm ${study.stock.material}`,
      study.isExample,
    ),
    version: version(),
    madeAt: systemClock.now(),
  });
};
