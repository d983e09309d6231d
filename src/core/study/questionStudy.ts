import type { CutStudy, StudyCell } from '../cutmodel/cutStudy.ts';
import { deliveryOf } from '../tube/deliveredPower.ts';
import type { Setting } from '../machine/setting.ts';
import type { Problem } from '../problem.ts';
import { questionSetting, type SettingToQuestion } from '../stock/plausibility.ts';

/** A setting in a study that looks mistyped, and where it stands. `index` counts the study's cells or tallies. */
export interface QuestionedSetting {
  readonly at: 'cell' | 'tally' | 'habit';
  readonly index: number;
  readonly problem: Problem;
}

/**
 * Every setting of a study that is so far from what cuts such a sheet that it was probably mistyped. Cells are given more
 * room than what is said to cut: a card is there to find the limits, and one made for a thicker sheet comes out
 * everywhere.
 */
export const questionStudy = (study: CutStudy): readonly QuestionedSetting[] => {
  const { material, thicknessMm } = study.stock;
  const { nominalW } = study.machine;
  const delivery = deliveryOf(study.machine);
  const asked = (setting: SettingToQuestion['setting'], thickness: number | undefined) => {
    const deliveredFraction = delivery(setting.powerPct) ?? undefined;
    return {
      setting,
      material,
      thicknessMm: thickness ?? thicknessMm,
      ...(deliveredFraction === undefined ? {} : { deliveredFraction }),
      ...(nominalW === undefined ? {} : { nominalW }),
    };
  };
  const question = (
    at: QuestionedSetting['at'],
    index: number,
    problem: Problem | undefined,
  ): readonly QuestionedSetting[] => (problem === undefined ? [] : [{ at, index, problem }]);

  const cells = study.cells.flatMap((cell, index) =>
    question('cell', index, questionCell(cell, asked(cell, cell.thicknessMm))),
  );
  const tallies = study.tallies.flatMap((tally, index) => {
    const cuts = tally.out > tally.hangs + tally.stays;
    const claim = cuts ? 'cuts' : 'tried';
    return question(
      'tally',
      index,
      questionSetting({ ...asked(tally.setting, tally.thicknessMm), claim }),
    );
  });
  if (study.habit === undefined) return [...cells, ...tallies];
  const habit: Pick<Setting, 'powerPct' | 'speedMmPerS' | 'passes'> = { ...study.habit, passes: 1 };
  const ofHabit = questionSetting({ ...asked(habit, undefined), claim: 'cuts' });
  return [...cells, ...tallies, ...question('habit', 0, ofHabit)];
};

const questionCell = (
  { grade }: StudyCell,
  asked: Omit<SettingToQuestion, 'claim'>,
): Problem | undefined => {
  const tried = questionSetting({ ...asked, claim: 'tried' });
  if (tried !== undefined || grade !== 'out') return tried;
  const cuts = questionSetting({ ...asked, claim: 'cuts' });
  return cuts?.code === 'speed-looks-too-fast' ? cuts : undefined;
};
