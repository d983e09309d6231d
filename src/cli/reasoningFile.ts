import type { CutStudy } from '../core/cutmodel/cutStudy.ts';
import type { Explanation } from '../core/explain/explanation.ts';
import { systemClock } from '../host/clock.ts';
import type { DrawReasoning } from '../served/reasoningFile.ts';
import { inventedText } from '../words/texts.ts';
import { version } from './version.ts';

/** The page of reasons of a sheet, whoever asks for it; printing is loaded when it is first asked for. */
export const reasoningPage = async (
  cut: CutStudy,
  explanation: Explanation,
  isExample = false,
): Promise<Uint8Array> => {
  const { reasoningPdf } = await import('../print/reasoningPdf.ts');
  const { thicknessMm, material } = cut.stock;
  return reasoningPdf(cut, explanation, {
    stock: inventedText.stock(`${String(thicknessMm)} mm ${material}`, isExample),
    version: version(),
    madeAt: systemClock.now(),
  });
};

/** The same of a stored study. */
export const reasoningFile: DrawReasoning = ({ study, cut, explanation }) =>
  reasoningPage(cut, explanation, study.isExample);
