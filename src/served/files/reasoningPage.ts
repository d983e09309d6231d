import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import type { Explanation } from '../../core/explain/explanation.ts';
import type { Outcome } from '../../core/problem.ts';
import { inventedText } from '../../words/texts.ts';
import type { Printer } from './printer.ts';

/** The page of reasons of a sheet, whoever asks for it. */
export const reasoningPage = (
  cut: CutStudy,
  explanation: Explanation,
  { printer, isExample = false }: { readonly printer: Printer; readonly isExample?: boolean },
): Promise<Outcome<Uint8Array>> => {
  const { thicknessMm, material } = cut.stock;
  const stock = inventedText.stock(`${String(thicknessMm)} mm ${material}`, isExample);
  return printer.reasoning(cut, explanation, { stock });
};
