import type { Caution, CautionAct } from './shape/caution.ts';
import { allCautions } from './texts.ts';

/**
 * The cautions for an act, those that matter most first. They never say that something is safe, and do not replace the
 * machine's manual, local law or a laser safety officer; the first of `always` says so.
 */
export const cautionsFor = (act: CautionAct): readonly Caution[] => {
  const own = allCautions[act];
  return [
    ...own.filter(({ essential }) => essential),
    ...own.filter(({ essential }) => !essential),
  ];
};

/** The few lines for a narrow place: the essential cautions of several acts, in this order. */
export const essentialCautions = (acts: readonly CautionAct[]): readonly Caution[] =>
  acts.flatMap((act) => cautionsFor(act).filter(({ essential }) => essential));
