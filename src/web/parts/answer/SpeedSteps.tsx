import { Label } from 'react-aria-components/Label';
import { RadioGroup } from 'react-aria-components/RadioGroup';
import type { FitAnswer } from '../../../core/cutmodel/fitAnswer.ts';
import type { PromiseWish } from '../../../core/reading/promise.ts';
import { answerText as words } from '../../../words/en/screens/answer.ts';
import { powerWords, speedWords } from '../../../words/en/figures.ts';
import { secondsAPart } from './secondsAPart.ts';
import { Option } from '../choice/Option.tsx';
import './speedSteps.css';

export type Step = 'surer' | 'holds';

export interface SpeedStepsProps {
  readonly answer: FitAnswer;
  readonly promise: PromiseWish;
  readonly chosen: Step;
  readonly onChoose: (step: Step) => void;
}

/**
 * Three speeds one below the other, like marks on a rule: one faster than holds (to see what it would cost in parts), the
 * fastest that holds, and one surer, which is the default for production. Each with what comes out and its time.
 */
export const SpeedSteps = ({ answer, promise, chosen, onChoose }: SpeedStepsProps) => {
  const { recommended, oneStepSurer: surer, oneStepFaster: faster } = answer;
  if (recommended === null) return null;
  const holdsS = secondsAPart(recommended, promise, recommended.passes);
  return (
    <div className="steps">
      {faster === undefined ? null : (
        <div className="steps-row steps-row-beyond">
          <span className="steps-speed">{speedWords(faster.speedMmPerS)}</span>
          <span className="steps-what">
            <span className="steps-name">{words.faster}</span>
            <span className="steps-more">
              {words.onAverage(faster.outOf100Mean)};{' '}
              {words.onlySureOf(faster.sureOfPromisePct, promise.outOf100)};{' '}
              {words.saves(holdsS - secondsAPart(faster, promise, recommended.passes))}
            </span>
          </span>
        </div>
      )}
      <RadioGroup
        className="steps-choice"
        value={chosen}
        onChange={(value) => onChoose(value === 'surer' ? 'surer' : 'holds')}
      >
        <Label className="unseen">{words.steps}</Label>
        <Option value="holds" className="steps-row">
          <span className="steps-speed">{speedWords(recommended.speedMmPerS)}</span>
          <span className="steps-what">
            <span className="steps-name">{words.holds}</span>
            <span className="steps-more">
              {words.onAverage(recommended.outOf100Mean)};{' '}
              {words.sureOf(recommended.sureAtSpeedPct, promise.outOf100)}
            </span>
          </span>
          <span className="choice-dot" aria-hidden="true" />
        </Option>
        {surer === undefined ? null : (
          <Option value="surer" className="steps-row">
            <span className="steps-speed">{speedWords(surer.speedMmPerS)}</span>
            <span className="steps-what">
              <span className="steps-name">
                {words.surer} <span className="steps-note">{words.surerMore}</span>
              </span>
              <span className="steps-more">
                {words.onAverage(surer.outOf100Mean)};{' '}
                {words.sureOf(surer.sureOfPromisePct, promise.outOf100)};{' '}
                {words.costs(secondsAPart(surer, promise, recommended.passes) - holdsS)}
              </span>
            </span>
            <span className="choice-dot" aria-hidden="true" />
          </Option>
        )}
      </RadioGroup>
      <p className="small soft">
        {powerWords(recommended.powerPct)}. {words.timeOnly(promise.partLengthMm)}
      </p>
    </div>
  );
};
