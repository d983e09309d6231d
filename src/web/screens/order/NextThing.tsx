import { pageApi } from '../../../wire/pageApi.ts';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { actsOfSettings } from '../../../core/card/cardActs.ts';
import type { Plan, PlanAct } from '../../../core/plan/planNext.ts';
import type { SheetVerdict } from '../../../core/running/sheetVerdict.ts';
import { glowsOn } from '../../../core/stock/glowsOn.ts';
import { stockThicknessMm } from '../../../core/stock/stockThickness.ts';
import { conditionsNow } from '../../../core/study/orderDefaults.ts';
import type { OrderSoFar } from '../../../core/study/orderSoFar.ts';
import { promiseOf } from '../../../core/study/promiseOf.ts';
import type { StartedOrder } from '../../../core/study/startedOrder.ts';
import type { Study } from '../../../core/study/study.ts';
import { speedWords, orderRunText as words } from '../../../words/texts.ts';
import { Action, ActionLink } from '../../parts/action/Action.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { problemInWords } from '../../state/inWords.ts';
import { keepNextCard } from '../../state/nextCard.ts';
import { Looked, verdictSaid } from './LastSheet.tsx';
import { Said } from '../../parts/said/Said.tsx';
import { pageAt, pages } from '../../state/pages.ts';

export interface NextThingProps {
  readonly study: Study;
  readonly order: StartedOrder;
  readonly soFar: OrderSoFar;
  /** Absent: it is being worked out. */
  readonly plan: Plan | undefined;
  /** The sheet counted last was far too bad for luck, and nobody has looked yet. */
  readonly lookFirst: SheetVerdict | undefined;
  readonly onLooked: () => void;
}

type SheetAct = Extract<PlanAct, { readonly act: 'sheet' }>;
type CardAct = Extract<PlanAct, { readonly act: 'card' }>;

/** The one next thing to do, why, what to expect of it, and what is left. */
export const NextThing = ({ study, order, soFar, plan, lookFirst, onLooked }: NextThingProps) => {
  if (plan === undefined)
    return (
      <Said what="answer" className="order-next order-waits" isBehind>
        <p className="order-act">{words.planning}</p>
      </Said>
    );
  const { next } = plan;
  const [main] = next.act === 'sheet' ? next.settings : [];
  return (
    <Said what="answer" className={`order-next ${lookFirst === undefined ? '' : 'order-stop'}`}>
      <p className="order-which">{words.sheet(soFar.sheets.length + 1)}</p>
      {next.act === 'sheet' ? (
        lookFirst !== undefined ? (
          <>
            <p className="order-act">{words.lookFirst}</p>
            <p>{verdictSaid(lookFirst)}</p>
            <Looked looks={lookFirst.looks.slice(0, 3)} />
            {main === undefined ? null : <p>{words.then(speedWords(main.speedMmPerS))}</p>}
            <div className="actions">
              <Action kind="strong" onPress={onLooked}>
                {words.looked}
              </Action>
            </div>
          </>
        ) : (
          <NextSheet study={study} soFar={soFar} plan={plan} next={next} />
        )
      ) : next.act === 'card' ? (
        <NextCard study={study} order={order} plan={plan} next={next} />
      ) : null}
      <WhatIsLeft order={order} soFar={soFar} plan={plan} />
    </Said>
  );
};

const heldMmPerS = ({ sheets }: OrderSoFar): number | undefined =>
  sheets.at(-1)?.tallies[0].setting.speedMmPerS;

const isSame = (one: number, other: number): boolean => Math.abs(one - other) < 0.05;

interface NextSheetProps {
  readonly study: Study;
  readonly soFar: OrderSoFar;
  readonly plan: Plan;
  readonly next: SheetAct;
}

const NextSheet = ({ study, soFar, plan, next }: NextSheetProps) => {
  const [main, ...others] = next.settings;
  if (main === undefined) return null;
  const held = heldMmPerS(soFar);
  const { speedMmPerS } = main;
  const act =
    held === undefined
      ? words.first
      : isSame(held, speedMmPerS)
        ? words.same
        : speedMmPerS > held
          ? words.faster
          : words.slower;
  const { air } = conditionsNow(study);
  const acts = actsOfSettings({
    settings: next.settings.map((one) => ({ ...one, ...(air === undefined ? {} : { air }) })),
    thicknessMm: stockThicknessMm(study.stock),
    glows: glowsOn(study.stock.material),
  });
  const { message } = problemInWords(plan.reason);
  const { outOf100 } = promiseOf(study);
  return (
    <>
      <p className="order-act">
        {act} <span className="order-speed figure-text">{speedWords(speedMmPerS)}</span>
      </p>
      {others.map((other) => (
        <p key={other.speedMmPerS} className="order-other">
          {words.mixed(other.parts, speedWords(other.speedMmPerS))}. {words.mixedWhy}
        </p>
      ))}
      <p className="order-setting figure-text">
        {words.setting(main, plan.sheet?.parts ?? main.parts)}
      </p>
      <ul className="order-type">
        <li>
          {act === words.same
            ? words.typeNothing
            : words.typeSpeed(
                held === undefined ? undefined : speedWords(held),
                speedWords(speedMmPerS),
              )}
        </li>
        {others.map((other) => (
          <li key={other.speedMmPerS}>
            {words.typeSpeed(undefined, speedWords(other.speedMmPerS))}
          </li>
        ))}
      </ul>
      <p>{message}</p>
      {plan.sheet === undefined ? null : (
        <p>
          {words.expect(plan.sheet.parts, plan.sheet.notOut, plan.sheet.notOutAtMost)}{' '}
          <span className="soft">{words.sure(outOf100, plan.sheet.sureOfPromisePct)}</span>
        </p>
      )}
      <Cautions acts={[...acts, 'unattended', 'fire']} brief />
    </>
  );
};

interface NextCardProps {
  readonly study: Study;
  readonly order: StartedOrder;
  readonly plan: Plan;
  readonly next: CardAct;
}

const NextCard = ({ study, order, plan, next }: NextCardProps) => {
  const [, goTo] = useLocation();
  const rungs = new Map(
    next.cells.map(({ rung, ...setting }) => [rung, { ...setting, passes: 1 }]),
  );
  const saves = 'savesMinutes' in plan.reason.params ? plan.reason.params.savesMinutes : 0;
  const make = (): void => {
    const cellsEach = Math.max(1, Math.round(next.cells.length / rungs.size));
    keepNextCard(study.id, [...rungs.values()], { cellsEach });
    goTo(`${pageAt(pages.newCard, { id: study.id })}?next`);
  };
  const settings = [...rungs.values()];
  const speeds = settings.map(({ speedMmPerS }) => speedWords(speedMmPerS));
  // A plan keeps to one power.
  const powerPct = settings[0]?.powerPct ?? NaN;
  const unread = study.cards.at(-1);
  return (
    <>
      <p className="order-act">{words.card}</p>
      <p className="order-setting figure-text">{words.cardSettings(speeds, powerPct)}</p>
      <p>
        {saves >= 1 ? words.cardSaves(order.parts, saves) : problemInWords(plan.reason).message}
      </p>
      <div className="actions">
        {unread === undefined ? (
          <Action kind="strong" calls={pageApi.addCard} onPress={make}>
            {words.makeCard}
          </Action>
        ) : (
          <>
            <ActionLink
              kind="strong"
              href={pageAt(pages.card, { id: study.id, code: unread.code })}
            >
              {words.readCard}
            </ActionLink>
            <Action calls={pageApi.addCard} onPress={make}>
              {words.makeCard}
            </Action>
          </>
        )}
        <ActionLink calls={pageApi.changeStudy} href={pageAt(pages.study, { id: study.id })}>
          {words.sayHabit}
        </ActionLink>
      </div>
      <p className="soft">{words.withoutCard}</p>
    </>
  );
};

interface WhatIsLeftProps {
  readonly order: StartedOrder;
  readonly soFar: OrderSoFar;
  readonly plan: Plan;
}

const WhatIsLeft = ({ order, soFar, plan }: WhatIsLeftProps) => {
  const { minutes, minutesBand } = plan.expected;
  // By the clock when the plan came.
  const [now] = useState(Date.now);
  const done = new Date(now + minutes * 60_000);
  const clock = done.toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });
  const sheets = Math.ceil(soFar.left / order.partsPerSheet);
  return (
    <dl className="order-left figure-text">
      <div>
        <dt className="unseen">{words.left(soFar.left, sheets)}</dt>
        <dd>{words.left(soFar.left, sheets)}</dd>
      </div>
      <div>
        <dd>
          {words.time(minutes)} <span className="soft">({words.timeBand(...minutesBand)})</span>
        </dd>
      </div>
      <div>
        <dd>{words.doneAt(clock)}</dd>
      </div>
    </dl>
  );
};
