import type { Problem } from '../core/problem.ts';
import type { CautionAct } from './shape/caution.ts';
import { essentialCautions } from './cautions.ts';
import { problemInWords } from './words.ts';

/**
 * What a file or a page for the machine says in the few lines that it has: what is to be said of its material first, the
 * essential cautions of its acts after it.
 */
export const cautionLines = (
  acts: readonly CautionAct[],
  ofMaterial: readonly Problem[] = [],
): readonly string[] => [
  ...ofMaterial.map((problem) => problemInWords(problem).message),
  ...essentialCautions(acts).map(({ sentence }) => sentence),
];
