import { useMemo, useState } from 'react';
import { actsOfSettings } from '../../../core/card/cardActs.ts';
import type { Air } from '../../../core/machine/air.ts';
import { isReached, reachOf, type Reach } from '../../../core/cutmodel/reach.ts';
import { standingText, lengthWords, orderText as words } from '../../../words/texts.ts';
import type { FitAnswer } from '../../../core/cutmodel/fitAnswer.ts';
import type { OrderAnswer, PricedOrder } from '../../../core/order/orderAnswer.ts';
import { glowsOn } from '../../../core/stock/glowsOn.ts';
import { stockThicknessMm } from '../../../core/stock/stockThickness.ts';
import type { Study } from '../../../core/study/study.ts';
import { toCutStudy } from '../../../core/study/toCutStudy.ts';
import { keptAssumptions } from '../../state/costAssumptions.ts';
import { problemInWords } from '../../state/inWords.ts';
import type { Earlier } from '../../state/useEarlier.ts';
import { useCall } from '../../state/useCall.ts';
import { Cautions } from '../cautions/Cautions.tsx';
import { QuantityField } from '../quantity/QuantityField.tsx';
import { readOrderParts } from '../quantity/readers.ts';
import './cost.css';

interface OrderPartProps {
  readonly study: Study;
  readonly recommended: NonNullable<FitAnswer['recommended']>;
  /** The speed chosen above. */
  readonly speedMmPerS: number;
  readonly earlier: Earlier;
}

/** What is asked about first: the order that most shops know. */
const usualParts = 60;
const usualPerSheet = 20;

/** An order of so many parts: how many hang, how many to plan, what costs least. Fetched when it is opened. */
const OrderPart = ({ study, recommended, speedMmPerS, earlier }: OrderPartProps) => {
  const [parts, setParts] = useState(usualParts);
  const [partsPerSheet, setPartsPerSheet] = useState(usualPerSheet);
  const { powerPct, passes } = recommended;
  const { sheets } = earlier;
  const question = useMemo(
    () => ({
      study: toCutStudy(study),
      earlier: sheets,
      wish: {
        parts,
        partsPerSheet,
        setting: { powerPct, speedMmPerS, passes },
        cost: keptAssumptions(),
      },
    }),
    [study, sheets, parts, partsPerSheet, powerPct, speedMmPerS, passes],
  );
  const { answered, broke, isBusy } = useCall('order', question);
  const count = (value: number, label: string, set: (value: number) => void) => (
    <QuantityField
      label={label}
      value={value}
      show={String}
      parse={readOrderParts}
      onChange={(read) => {
        if (read !== undefined) set(read);
      }}
    />
  );
  return (
    <div className="stack" aria-busy={isBusy}>
      <div className="field-row">
        {count(parts, words.parts, setParts)}
        {count(partsPerSheet, words.perSheet, setPartsPerSheet)}
      </div>
      {broke !== undefined ? (
        <p>{words.broke(broke)}</p>
      ) : answered === undefined ? (
        <p>{words.calculating}</p>
      ) : answered.answer.ok ? (
        <OrderSays
          answer={answered.answer.value}
          study={study}
          air={recommended.air}
          passes={passes}
        />
      ) : (
        <p>{problemInWords(answered.answer.problem).message}</p>
      )}
    </div>
  );
};

interface OrderSaysProps {
  readonly answer: OrderAnswer;
  readonly study: Study;
  readonly air: Air | undefined;
  readonly passes: number;
}

const OrderSays = ({ answer, study, air, passes }: OrderSaysProps) => {
  const as = { air, passes, reach: reachOf(toCutStudy(study)) };
  const { chosen, cheapest, none, order, whyNotNone } = answer;
  const { forecast } = chosen;
  const { plan, planWithKnife, meetFlaw } = forecast;
  const acts = actsOfSettings({
    settings: [chosen, cheapest, none].flatMap((way) =>
      way === null ? [] : [{ speedMmPerS: way.speedMmPerS, ...(air === undefined ? {} : { air }) }],
    ),
    thicknessMm: stockThicknessMm(study.stock),
    glows: glowsOn(study.stock.material),
  });
  return (
    <>
      {acts.length === 0 ? null : <Cautions acts={acts} brief />}
      <p>
        {words.expect(order.parts, forecast.hang, forecast.stay)}{' '}
        <strong>{words.plan(plan, order.parts)}</strong>{' '}
        {planWithKnife === null || planWithKnife === plan ? '' : words.withKnife(planWithKnife)}
      </p>
      <p className="small soft">
        {words.length(lengthWords(order.partLengthMm))}{' '}
        {meetFlaw === undefined ? words.soundOnly : words.flaws(meetFlaw)}
      </p>
      <table className="cost">
        <caption>{words.caption(order.parts)}</caption>
        <thead>
          <tr>
            <th scope="col">{words.way}</th>
            <th scope="col">{words.hang}</th>
            <th scope="col">{words.lost}</th>
            <th scope="col">{words.plan10}</th>
            <th scope="col">{words.cost}</th>
          </tr>
        </thead>
        <tbody>
          <OrderRow name={words.ways.chosen} at={chosen} {...as} />
          {cheapest === null ? null : <OrderRow name={words.ways.cheapest} at={cheapest} {...as} />}
          {none === null ? null : <OrderRow name={words.ways.none} at={none} {...as} />}
        </tbody>
      </table>
      <p className="small soft">
        {cheapest === null ? `${words.noPlace} ` : ''}
        {whyNotNone === undefined
          ? words.promisesNone(order.parts)
          : words.noNone(problemInWords(whyNotNone).message)}{' '}
        {words.assumed}
      </p>
    </>
  );
};

interface OrderRowProps {
  readonly name: string;
  readonly at: PricedOrder;
  readonly air: Air | undefined;
  readonly reach: Reach;
  readonly passes: number;
}

const OrderRow = ({ name, at, air, reach, passes }: OrderRowProps) => (
  <tr>
    <th scope="row">
      {name}
      <span className="cost-setting">
        {words.setting({ ...at, passes, air })}
        {isReached(reach, { ...at, passes }) ? '' : ` · ${standingText.guess}`}
      </span>
    </th>
    <td>{words.count(at.forecast.hang.mean)}</td>
    <td>{words.count(at.forecast.stay.mean)}</td>
    <td>{at.forecast.plan === null ? words.noPlan : String(at.forecast.plan)}</td>
    <td className="cost-total">{words.money(at.orderCost)}</td>
  </tr>
);

export default OrderPart;
