import type { JobSheet } from '../../core/card/jobSheet.ts';
import { cautionLines } from '../../words/cautionLines.ts';

/** The cautions that go with every file of a card, wherever there is room for words; what its material asks for first. */
export const cardCautions = ({
  cautions,
  ofMaterial,
}: Pick<JobSheet, 'cautions' | 'ofMaterial'>): readonly string[] =>
  cautionLines(
    cautions.filter((act) => act !== 'newMaterial'),
    ofMaterial,
  );
