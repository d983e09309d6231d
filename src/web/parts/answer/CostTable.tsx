import { useState } from 'react';
import { partCost, perHourWhereEqual, type CostAssumptions } from '../../../core/cost/partCost.ts';
import { waysToCut, type PricedWay } from '../../../core/cost/waysToCut.ts';
import { reachOf } from '../../../core/cutmodel/reach.ts';
import { toCutStudy } from '../../../core/study/toCutStudy.ts';
import { standingText, costText as words } from '../../../words/texts.ts';
import { promiseOf } from '../../../core/study/promiseOf.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import type { Study } from '../../../core/study/study.ts';
import { keepAssumptions, keptAssumptions } from '../../state/costAssumptions.ts';
import type { AnswerStanding } from '../../state/useAnswer.ts';
import { Scrolls } from '../page/Scrolls.tsx';
import { QuantityField } from '../quantity/QuantityField.tsx';
import { readExponent, readFigure, readTubeHours } from '../quantity/readers.ts';
import './cost.css';

const fields = [
  ['perHour', words.perHour, readFigure],
  ['tubePrice', words.tubePrice, readFigure],
  ['tubeHoursAtRated', words.tubeHours, readTubeHours],
  ['lifeExponent', words.exponent, readExponent],
  ['sheetPerPart', words.sheetPerPart, readFigure],
  ['knifeSeconds', words.knifeSeconds, readFigure],
] as const satisfies readonly (readonly [keyof CostAssumptions, string, typeof readFigure])[];

/** Gentle-and-slow against hard-and-fast, by figures that the user sees and sets. */
export const CostTable = ({ study, answer }: { study: Study; answer: AnswerStanding }) => {
  const [assumed, setAssumed] = useState(keptAssumptions);
  const ways = waysToCut(
    answer,
    study.machine,
    promiseOf(study).partLengthMm,
    reachOf(toCutStudy(study)),
  );
  const change = (part: Partial<CostAssumptions>): void => {
    const next = { ...assumed, ...part };
    setAssumed(next);
    keepAssumptions(next);
  };
  return (
    <div className="stack">
      <Scrolls label={words.caption}>
        <table className="cost">
          <caption>{words.caption}</caption>
          <thead>
            <tr>
              <th scope="col">{words.way}</th>
              <th scope="col">{words.seconds}</th>
              <th scope="col">{words.time}</th>
              <th scope="col">{words.knife}</th>
              <th scope="col">{words.tube}</th>
              <th scope="col">{words.total}</th>
            </tr>
          </thead>
          <tbody>
            {ways.map((way) => (
              <CostRow key={way.kind} way={way} run={answer.standing.run} assumed={assumed} />
            ))}
          </tbody>
        </table>
      </Scrolls>
      <p>{crossing(ways, assumed)}</p>
      <p className="small soft">
        {words.timeOnly} {words.assumed}
        {answer.line.some((point) => point.currentMa !== undefined) ? '' : ` ${words.noCurrent}`}
      </p>
      <div className="field-row">
        {fields.map(([field, label, parse]) => (
          <QuantityField
            key={field}
            label={label}
            value={assumed[field]}
            show={String}
            parse={parse}
            onChange={(value) => {
              if (value !== undefined) change({ [field]: value });
            }}
          />
        ))}
      </div>
    </div>
  );
};

/** Parts that the money is for: of one alone it is too little to read. */
const hundred = 100;

interface CostRowProps {
  readonly way: PricedWay;
  /** Passes and air as the setting to run has them. */
  readonly run: Setting | undefined;
  readonly assumed: CostAssumptions;
}

const CostRow = ({ way, run, assumed }: CostRowProps) => {
  const cost = partCost(way, assumed);
  return (
    <tr>
      <th scope="row">
        {words.ways[way.kind]}
        <span className="cost-setting">
          {words.setting({ ...way, passes: run?.passes, air: run?.air })}
          {way.isGuess ? ` · ${standingText.guess}` : ''}
        </span>
      </th>
      <td>{words.duration(cost.seconds)}</td>
      <td>{words.money(hundred * cost.time)}</td>
      <td>{words.money(hundred * cost.knife)}</td>
      <td>{words.money(hundred * cost.tube)}</td>
      <td className="cost-total">{words.money(hundred * cost.total)}</td>
    </tr>
  );
};

const crossing = (ways: readonly PricedWay[], assumed: CostAssumptions): string => {
  const [gentle, hard] = [ways[0], ways.at(-1)];
  if (gentle === undefined || hard === undefined || gentle === hard) return '';
  const perHour = perHourWhereEqual(gentle, hard, assumed);
  return perHour === null
    ? words.crossNever(partCost(gentle, assumed).total <= partCost(hard, assumed).total)
    : words.cross(perHour);
};
