import type { ProvenSetting } from '../../core/book/provenSetting.ts';
import type { FiringLimits } from '../../core/card/firingLimits.ts';
import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import type { FitAnswer } from '../../core/cutmodel/fitAnswer.ts';
import type { Setting } from '../../core/machine/setting.ts';
import type { ProblemOf } from '../../core/problem.ts';
import { evidenceFrom } from '../../core/standing/evidenceFrom.ts';
import { beyondItsMachine, notToBeCut } from '../../core/standing/notToBeCut.ts';
import type { Standing } from '../../core/standing/standing.ts';
import { standingOf } from '../../core/standing/standingOf.ts';
import { judgeMaterial } from '../../core/stock/judgeMaterial.ts';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import { promiseOf } from '../../core/study/promiseOf.ts';
import type { RecordedTally, Study } from '../../core/study/study.ts';
import type { Aim } from '../../core/cutmodel/aims.ts';
import type { CheckStrip } from '../../core/watch/findStrips.ts';
import type { StripVerdict } from '../../core/watch/stripVerdict.ts';

export interface AnswerQuestion {
  readonly cut: CutStudy;
  readonly aim: Aim;
  readonly earlier: readonly EarlierSheet[];
}

export interface StripQuestion {
  readonly cut: CutStudy;
  readonly earlier: readonly EarlierSheet[];
  readonly setting: Setting;
  readonly offerFaster: boolean;
}

/** A strip, and what is to be asked of it where it is read and new enough that somebody acts on it. */
export interface StripToJudge {
  readonly strip: CheckStrip;
  readonly question?: StripQuestion;
}

/** All that is stored of a kept setting, with the sums that its standing still needs. */
export interface KeptQuestion {
  readonly kept: ProvenSetting;
  readonly tallies: readonly RecordedTally[];
  readonly study?: Study;
  /** What its machine may be set to by now. Absent: nobody knows which it is. */
  readonly machine?: FiringLimits['machine'];
  /** The last read first. */
  readonly strips: readonly StripToJudge[];
  /** Codes of kept settings from which it differs only by air. */
  readonly onlyByAir?: readonly string[];
  /** What the sheet's cards and orders say now, where that has a say. */
  readonly answer?: AnswerQuestion;
  /** What its sums would be made of was not read: there was no time left for them. */
  readonly isUnread?: true;
}

export interface StripJudged {
  readonly strip: CheckStrip;
  readonly verdict: StripVerdict;
}

/** How a kept setting stands, and what its strips say. */
export interface KeptJudged {
  readonly standing: Standing;
  readonly strips: readonly StripJudged[];
}

/** Whether its standing can be said without a sum: nothing was said since it was kept. */
export const needsSums = (asked: KeptQuestion): boolean =>
  refusalOf(asked.kept) === undefined &&
  beyondOf(asked) === undefined &&
  (asked.isUnread === true ||
    asked.answer !== undefined ||
    asked.strips.some(({ question }) => question !== undefined));

/** Why nothing stands of a setting that is kept: its material is refused today. */
const refusalOf = ({ holdsFor }: ProvenSetting): ProblemOf<'material-refused'> | undefined => {
  const judged = judgeMaterial(holdsFor.material);
  return judged.decision === 'refuse' ? judged.problem : undefined;
};

const beyondOf = ({ kept, tallies, machine }: KeptQuestion): Standing | undefined =>
  machine === undefined
    ? undefined
    : beyondItsMachine(kept, machine, promiseOf({ promise: kept.promise, tallies }));

/** Who makes the sums of a standing. */
interface Sums {
  readonly verdictOf: (question: StripQuestion) => StripVerdict;
  readonly answerOf: (question: AnswerQuestion) => FitAnswer;
}

/** How a kept setting stands. Without sums: as far as it is known, and where they are needed it says that they are missing. */
export const standingAsKnown = (asked: KeptQuestion, sums?: Sums): KeptJudged => {
  const { kept, tallies, study, answer } = asked;
  const strips = asked.strips.map(({ strip, question }): StripJudged => ({
    strip,
    verdict:
      question === undefined || sums === undefined ? { kind: 'unread' } : sums.verdictOf(question),
  }));
  const refusal = refusalOf(kept);
  if (refusal !== undefined)
    return { standing: notToBeCut(promiseOf({ promise: kept.promise, tallies }), refusal), strips };
  const beyond = beyondOf(asked);
  if (beyond !== undefined) return { standing: beyond, strips };
  const standing = standingOf(
    evidenceFrom({
      kept,
      tallies,
      strips,
      isSumMissing: sums === undefined && needsSums(asked),
      ...(study === undefined ? {} : { study }),
      ...(answer === undefined || sums === undefined ? {} : { answer: sums.answerOf(answer) }),
    }),
  );
  return { standing, strips };
};
