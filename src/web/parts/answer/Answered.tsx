import { pageApi } from '../../../wire/pageApi.ts';
import { IfMay } from '../action/IfMay.tsx';
import { lazy, useState } from 'react';
import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import { promiseOf } from '../../../core/study/promiseOf.ts';
import type { Study } from '../../../core/study/study.ts';
import { answerText as words, answerHeadText, costText } from '../../../words/texts.ts';
import type { HeadChange } from '../../state/change.ts';
import { fetchPart } from '../../state/fetchPart.ts';
import type { AnswerStanding } from '../../state/useAnswer.ts';
import type { Earlier } from '../../state/useEarlier.ts';
import { useWorkshop } from '../../state/workshop.tsx';
import { Action } from '../action/Action.tsx';
import { Fetched } from '../fetched/Fetched.tsx';
import { More } from '../more/More.tsx';
import { OpenedOnce } from '../more/OpenedOnce.tsx';
import { AimChoice } from './AimChoice.tsx';
import { CornersLine } from './CornersLine.tsx';
import { CostTable } from './CostTable.tsx';
import { EdgeLine } from './EdgeLine.tsx';
import { KeepInBook } from './KeepInBook.tsx';
import { ModelDetails } from './ModelDetails.tsx';
import { PromiseQuestion } from './PromiseQuestion.tsx';
import { SpeedSteps } from './SpeedSteps.tsx';
import { TubeLine } from './TubeLine.tsx';
import { Untold } from './Untold.tsx';
import { WhyPart } from './WhyPart.tsx';

const CutPicture = lazy(() => fetchPart(() => import('./CutPicture.tsx')));
const OrderPart = lazy(() => fetchPart(() => import('./OrderPart.tsx')));

interface AnsweredProps {
  readonly study: Study;
  readonly isSample: boolean;
  readonly answer: AnswerStanding;
  readonly behind: boolean;
  readonly earlier: Earlier;
  /** The one at the head. */
  readonly speed: Setting | undefined;
  readonly kept: ProvenSetting | undefined;
  readonly onChoose: (setting: Setting) => void;
}

/** What stands below the sentence once there is an answer: what to run, what it could not tell, and the rest one click below. */
export const Answered = (props: AnsweredProps) => {
  const { study, isSample, answer, behind, earlier, speed, kept, onChoose } = props;
  const { store } = useWorkshop();
  const [roomy] = useState(() => matchMedia('(min-width: 62rem)').matches);
  const changeHead = (head: HeadChange): void =>
    store.make({ kind: 'head', studyId: study.id, head });
  return (
    <>
      {speed === undefined ? null : (
        <SpeedSteps
          answer={answer}
          promise={promiseOf(study)}
          chosen={speed}
          kept={kept}
          onChoose={onChoose}
        />
      )}
      <EdgeLine {...answer} />
      {answer.recommended === null ? null : (
        <TubeLine machine={study.machine} powerPct={answer.recommended.powerPct} />
      )}
      {answer.morePasses === undefined ? null : (
        <p className="small">{words.passes(answer.morePasses, promiseOf(study))}</p>
      )}
      {answer.onThisSheet === undefined ? null : (
        <div className="stack">
          <p className="small">{words.onThisSheet(answer.onThisSheet, promiseOf(study))}</p>
          <Action
            kind="quiet"
            calls={pageApi.changeStudy}
            onPress={() => changeHead({ promise: { ...promiseOf(study), for: 'sheet' } })}
          >
            {words.promiseThisSheet}
          </Action>
        </div>
      )}
      <CornersLine corners={answer.corners} />
      {isSample ? null : <KeepInBook study={study} behind={behind} speed={speed} kept={kept} />}
      <Untold study={study} answer={answer} />
      <div className="answer-below">
        {answer.recommended === null ? null : <WhyPart study={study} earlier={earlier.sheets} />}
        <More title={words.picture} startsOpen={roomy}>
          <Fetched waiting={<p>{answerHeadText.calculating}</p>}>
            <CutPicture study={study} answer={answer} />
          </Fetched>
        </More>
        <IfMay call={pageApi.changeStudy}>
          <More title={words.ask}>
            <PromiseQuestion
              promise={promiseOf(study)}
              onChange={(promise) => changeHead({ promise })}
            />
            <AimChoice study={study} onChange={changeHead} />
          </More>
        </IfMay>
        {answer.recommended === null ? null : (
          <More title={costText.title}>
            <CostTable study={study} answer={answer} />
          </More>
        )}
        {answer.recommended === null ? null : (
          <OpenedOnce title={costText.order}>
            <Fetched waiting={<p>{answerHeadText.calculating}</p>}>
              <OrderPart
                study={study}
                recommended={{
                  ...answer.recommended,
                  powerPct: speed?.powerPct ?? answer.recommended.powerPct,
                }}
                speedMmPerS={speed?.speedMmPerS ?? answer.recommended.speedMmPerS}
                earlier={earlier}
              />
            </Fetched>
          </OpenedOnce>
        )}
        <More title={words.model}>
          <ModelDetails study={study} answer={answer} earlier={earlier} />
        </More>
      </div>
    </>
  );
};
