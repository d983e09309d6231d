import { pageApi } from '../../../wire/pageApi.ts';
import { useState } from 'react';
import type { MotionValues } from '../../../core/motion/motionValues.ts';
import type { MotionFit } from '../../../core/motion/fitMotion.ts';
import { motionText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';

export interface FittedMotionProps {
  readonly fit: MotionFit;
  /** Of the jobs, in their order. */
  readonly numbers: readonly number[];
  readonly onKeep: (motion: MotionValues) => void;
}

/** The machine that fits the times, how well, and what they do not tell. */
export const FittedMotion = ({ fit, numbers, onKeep }: FittedMotionProps) => {
  const [isKept, setIsKept] = useState(false);
  const { motion, jobs, cornerRuleIsTold, untold, notApart } = fit;
  const tellsAll = cornerRuleIsTold && untold.length === 0 && notApart.length === 0;
  return (
    <div className="stack">
      <h3>{words.fitTitle}</h3>
      <ul>
        {words.values(motion).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <p>
        {words.fits(fit)} {words.error(motion)}
      </p>
      <table className="timed-table">
        <caption className="small soft">{words.caption}</caption>
        <thead>
          <tr>
            {words.columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody className="figure-text">
          {jobs.map(({ toldS, computedS, offPct }, i) => (
            <tr key={numbers[i]}>
              <th scope="row">{words.job(numbers[i] ?? i + 1)}</th>
              <td>{words.duration(toldS)}</td>
              <td>{words.duration(computedS)}</td>
              <td>{words.off(offPct)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {cornerRuleIsTold ? null : <p>{words.ruleUntold}</p>}
      {untold.length === 0 ? null : <p>{words.untold(fit)}</p>}
      {notApart.length === 0 ? null : <p>{words.notApart(fit)}</p>}
      {tellsAll ? <p>{words.apart}</p> : null}
      {isKept ? (
        <p>{words.kept}</p>
      ) : (
        <div className="actions">
          <Action
            kind="strong"
            calls={pageApi.describeMachine}
            onPress={() => {
              onKeep(motion);
              setIsKept(true);
            }}
          >
            {words.keep}
          </Action>
        </div>
      )}
    </div>
  );
};
