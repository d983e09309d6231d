import { Label } from 'react-aria-components/Label';
import { RadioGroup } from 'react-aria-components/RadioGroup';
import type { ProvenSetting } from '../../../core/book/provenSetting.ts';
import { settingKey, type Setting } from '../../../core/machine/setting.ts';
import type { BestEdge } from '../../../core/reading/edge.ts';
import type { PromiseWish } from '../../../core/reading/promise.ts';
import { speedsBeside, type SpeedOffered } from '../../../core/standing/speedsBeside.ts';
import { answerText as words, standingText, powerWords, speedWords } from '../../../words/texts.ts';
import type { AnswerStanding } from '../../state/useAnswer.ts';
import { secondsAPart } from './secondsAPart.ts';
import { Option } from '../choice/Option.tsx';
import './speedSteps.css';

export interface SpeedStepsProps {
  readonly answer: AnswerStanding;
  readonly promise: PromiseWish;
  /** The one at the head. */
  readonly chosen: Setting;
  readonly kept: ProvenSetting | undefined;
  readonly onChoose: (setting: Setting) => void;
}

/**
 * Speeds one below the other, like marks on a rule: one faster than holds (to see what it would cost in parts), the
 * fastest that holds, and one surer; and what is run now, where that is another. The one at the head is the chosen one.
 */
export const SpeedSteps = ({ answer, promise, chosen, kept, onChoose }: SpeedStepsProps) => {
  const { recommended, oneStepFaster: faster, standing } = answer;
  const beside = speedsBeside(answer, standing);
  const { edge } = answer;
  const fastestS = secondsAPart(recommended ?? chosen, promise, chosen.passes);
  return (
    <div className="steps">
      {faster === undefined || recommended === null ? null : (
        <div className="steps-row steps-row-beyond">
          <span className="steps-speed">{speedWords(faster.speedMmPerS)}</span>
          <span className="steps-what">
            <span className="steps-name">{words.faster}</span>
            <span className="steps-more">
              {words.onAverage(faster.outOf100Mean)};{' '}
              {words.onlySureOf(faster.sureOfPromisePct, promise.outOf100)};{' '}
              {words.saves(fastestS - secondsAPart(faster, promise, recommended.passes))}
            </span>
          </span>
        </div>
      )}
      <RadioGroup
        className="steps-choice"
        value={settingKey(chosen)}
        onChange={(value) => {
          const found = beside.find(({ setting }) => settingKey(setting) === value);
          if (found !== undefined) onChoose(found.setting);
        }}
      >
        <Label className="unseen">{words.steps}</Label>
        {beside.map((offered) => (
          <Option
            key={settingKey(offered.setting)}
            value={settingKey(offered.setting)}
            className="steps-row"
          >
            <span className="steps-speed">
              {speedWords(offered.setting.speedMmPerS)}
              {recommended === null || offered.setting.powerPct === recommended.powerPct ? null : (
                <span className="steps-more">{powerWords(offered.setting.powerPct)}</span>
              )}
            </span>
            <span className="steps-what">
              <span className="steps-name">{nameOf(offered, kept, edge?.best)}</span>
              <span className="steps-more">
                {[
                  ...(offered.kind === 'edge' && edge?.preferred !== undefined
                    ? [words.edge.share(edge.best, edge.preferred)]
                    : []),
                  ...figuresOf(offered, promise),
                  ...(offered.kind === 'surer' || offered.kind === 'edge'
                    ? [costs(secondsAPart(offered.setting, promise, chosen.passes) - fastestS)]
                    : []),
                ].join('; ')}
              </span>
            </span>
            <span className="choice-dot" aria-hidden="true" />
          </Option>
        ))}
      </RadioGroup>
      <p className="small soft">
        {powerWords(chosen.powerPct)}
        {standing.isGuess ? ` (${standingText.guess.toLowerCase()})` : ''}.{' '}
        {words.timeOnly(promise.partLengthMm)}
      </p>
    </div>
  );
};

/** At another power a better edge may be the quicker one. */
const costs = (seconds: number): string =>
  seconds < 0 ? words.saves(-seconds) : words.costs(seconds);

const nameOf = (
  { kind, setting }: SpeedOffered,
  kept: ProvenSetting | undefined,
  best: BestEdge = 'clean',
): string => {
  const isKept = kept !== undefined && settingKey(kept.setting) === settingKey(setting);
  const name = {
    run: isKept ? standingText.kept : standingText.run,
    holds: words.holds,
    surer: words.surer,
    edge: words.edge.names[best],
  }[kind];
  return isKept && kind !== 'run' ? `${name} · ${standingText.kept}` : name;
};

const figuresOf = (
  { outOf100Mean, surePct, kind }: SpeedOffered,
  { outOf100 }: PromiseWish,
): readonly string[] =>
  outOf100Mean === undefined || surePct === undefined
    ? kind === 'run'
      ? [standingText.runMore]
      : []
    : [words.onAverage(outOf100Mean), words.sureOf(surePct, outOf100)];
