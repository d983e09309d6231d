import { answerForAim } from '../../core/cutmodel/answerForAim.ts';
import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import type { FitAnswer } from '../../core/cutmodel/fitAnswer.ts';
import type { Setting } from '../../core/machine/setting.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { fitWithEarlier } from '../../core/study/answerWithEarlier.ts';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import { heldBackBy } from '../../core/study/settingHeldBack.ts';
import { stripSettings } from '../../core/watch/stripSettings.ts';

export interface StripWanted {
  readonly cut: CutStudy;
  readonly earlier: readonly EarlierSheet[];
  /** The proven one. */
  readonly setting: Setting;
  readonly cells?: number;
}

export interface StripRungs {
  readonly rungs: readonly Setting[];
  /** What is known of the sheet before it is cut. */
  readonly answer: FitAnswer;
}

/**
 * The settings of a check strip, by what earlier sheets taught. Refuses a proven setting that machine or sheet do not bear: a strip
 * without it would say nothing of it. ~0.4 s.
 */
export const stripToCut = ({ cut, earlier, setting, cells }: StripWanted): Outcome<StripRungs> => {
  const fitted = fitWithEarlier(cut, earlier);
  const beyond = heldBackBy(fitted, setting);
  if (beyond !== undefined) return { ok: false, problem: beyond };
  return done({
    rungs: stripSettings(fitted, setting, cells),
    answer: answerForAim(fitted, 'fastest'),
  });
};
