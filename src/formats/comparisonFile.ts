import type { Comparison } from '../core/compare/compareConditions.ts';
import type { Said, Say } from './answerFile.ts';

/** The sentences that stand before a comparison's figures. */
export interface ComparisonSaid {
  readonly sentence: string;
  readonly exact: string;
  readonly howMany: string;
  readonly card: string;
}

/** A comparison as the command line and the server print it. */
export type ComparisonFile = Omit<Comparison, 'remarks'> & {
  readonly said: ComparisonSaid;
  readonly remarks: readonly Said[];
};

export const comparisonFile = (
  { remarks, ...comparison }: Comparison,
  said: ComparisonSaid,
  say: Say,
): ComparisonFile => ({
  said,
  ...comparison,
  remarks: remarks.map((remark) => {
    const { code, message } = say(remark);
    return { code, message };
  }),
});
