import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import type { FitAnswer } from '../../../core/cutmodel/fitAnswer.ts';
import { settingKey, type Setting } from '../../../core/machine/setting.ts';
import { answerText as words } from '../../../words/texts.ts';
import { problemInWords } from '../../state/inWords.ts';
import type { AnswerStanding } from '../../state/useAnswer.ts';
import { StandingSays } from '../standing/StandingSays.tsx';
import { sureAt } from './sureAt.ts';

export interface AnswerSaidProps {
  readonly answer: AnswerStanding;
  /** The speed at the head; absent: there is no setting yet. */
  readonly speed: Setting | undefined;
  readonly kept: ProvenSetting | undefined;
}

/** An answer in its sentence with its two figures, or why it names no setting. */
export const AnswerSaid = ({ answer, speed, kept }: AnswerSaidProps) =>
  speed === undefined ? (
    <NoSetting answer={answer} />
  ) : (
    <>
      <p className="answer-cut">{words.cutAt(speed)}</p>
      <Promised answer={answer} speed={speed} kept={kept} />
      <StandingSays standing={answer.standing} />
    </>
  );

interface PromisedProps {
  readonly answer: AnswerStanding;
  readonly speed: Setting;
  readonly kept: ProvenSetting | undefined;
}

/** No promise is named for a speed of which nobody asked it, nor over a guess. */
const Promised = ({ answer, speed, kept }: PromisedProps) => {
  const surePct =
    sureAt(answer, speed) ??
    (kept !== undefined && settingKey(kept.setting) === settingKey(speed)
      ? kept.surePct
      : undefined);
  const { kind, isGuess } = answer.standing;
  return surePct === undefined || kind === 'failed' || isGuess ? null : (
    <p className="answer-promise">{words.promised(answer.standing.promise.outOf100, surePct)}</p>
  );
};

const NoSetting = ({ answer }: { readonly answer: FitAnswer }) => {
  const said = answer.reason === undefined ? undefined : problemInWords(answer.reason);
  return (
    <>
      <p className="answer-none">{words.noneYet}</p>
      {said === undefined ? null : (
        <p>
          {said.message} {said.remedy}
        </p>
      )}
    </>
  );
};
