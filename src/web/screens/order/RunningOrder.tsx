import { pageOrderApi } from '../../../wire/pageApi.ts';
import { useMay } from '../../state/role.ts';
import { useMemo, useRef, useState } from 'react';
import { nestFromDrawing } from '../../../app/drawing/nestFromDrawing.ts';
import { climbOf, savedByClimbing } from '../../../core/running/climb.ts';
import { sheetVerdict } from '../../../core/running/sheetVerdict.ts';
import {
  foretoldOf,
  talliesOfSheet,
  type PartsCounted,
} from '../../../core/running/sheetCounted.ts';
import { stockThicknessMm } from '../../../core/stock/stockThickness.ts';
import { conditionsNow } from '../../../core/study/orderDefaults.ts';
import { orderSoFar, planWishOf, studyOfOrder } from '../../../core/study/orderSoFar.ts';
import { promiseOf } from '../../../core/study/promiseOf.ts';
import type { StartedOrder } from '../../../core/study/startedOrder.ts';
import type { Study } from '../../../core/study/study.ts';
import { noteText, speedWords, orderRunText as words, studyText } from '../../../words/texts.ts';
import { Action, ActionLink } from '../../parts/action/Action.tsx';
import { SureAction } from '../../parts/action/SureAction.tsx';
import { Invented } from '../../parts/invented/Invented.tsx';
import { NoteOf } from '../../parts/note/NoteOf.tsx';
import { Notice, ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Section, useDocumentTitle } from '../../parts/page/Page.tsx';
import { newId } from '../../state/newId.ts';
import { useDraft } from '../../state/useDraft.ts';
import { useEarlier } from '../../state/useEarlier.ts';
import { useCall } from '../../state/useCall.ts';
import { withOptional } from '../../state/withOptional.ts';
import { useWorkshop } from '../../state/workshop.tsx';
import { CarriedOver } from './CarriedOver.tsx';
import { ClimbPicture } from './ClimbPicture.tsx';
import { CountedSheets } from './CountedSheets.tsx';
import { CountSheet } from './CountSheet.tsx';
import { LastSheet } from './LastSheet.tsx';
import { NextThing } from './NextThing.tsx';
import { SheetFiles } from './SheetFiles.tsx';
import { Said } from '../../parts/said/Said.tsx';
import { pageAt, pages } from '../../state/pages.ts';

export interface RunningOrderProps {
  readonly study: Study;
  readonly order: StartedOrder;
}

/** An order that is cut sheet by sheet: the one next thing, the count, and the climb so far. */
export const RunningOrder = ({ study, order }: RunningOrderProps) => {
  const { store } = useWorkshop();
  const may = useMay();
  const { sheets: earlier, state } = useEarlier(study);
  const head = useRef<HTMLDivElement>(null);
  const soFar = useMemo(() => orderSoFar(order, study.tallies), [order, study.tallies]);
  const { sheets, isDone } = soFar;
  const question = useMemo(
    () =>
      isDone || state === 'asking'
        ? undefined
        : { study: studyOfOrder(study, order), wish: planWishOf(order, soFar), earlier },
    [isDone, state, study, order, soFar, earlier],
  );
  const { answered, broke, isBusy } = useCall('plan', question);
  const promise = { ...promiseOf(study), partLengthMm: order.partLengthMm };
  const planned = question === undefined || broke !== undefined ? undefined : answered?.answer;
  const plan = planned?.ok === true && !isBusy ? planned.value.plan : undefined;
  const last = sheets.at(-1);
  const verdict = sheetVerdict(promise, sheets);
  const [looked, setLooked] = useState<number>();
  const lookFirst = verdict?.lookFirst === true && looked !== sheets.length ? verdict : undefined;
  const { stock } = study;
  const title = words.running(order.parts);
  useDocumentTitle(title);
  const count = (counted: readonly PartsCounted[], isAsPlanned: boolean): void => {
    const foretold =
      isAsPlanned && plan?.sheet !== undefined && plan.keeps !== undefined
        ? foretoldOf(promise, plan.sheet, plan.keeps)
        : undefined;
    const tallies = talliesOfSheet(study, order, {
      counted,
      at: new Date().toISOString(),
      ids: counted.map(newId),
      ...(foretold === undefined ? {} : { foretold }),
    });
    for (const tally of tallies) store.make({ kind: 'tally', studyId: study.id, tally });
    head.current?.scrollIntoView({ block: 'start' });
  };
  const settings = plan?.next.act === 'sheet' ? plan.next.settings : undefined;
  const [drawing, setDrawing] = useDraft<string | null>({
    name: `drawing.${order.id}`,
    initial: null,
  });
  /** A drawing that fits the order gives it its picture to count on. */
  const takeDrawing = (text: string): void => {
    setDrawing(text);
    const read = nestFromDrawing(text);
    if (order.nest !== undefined || !read.ok || !may(pageOrderApi.keepOrder)) return;
    const { nest } = read.value;
    if (nest.parts.length === order.partsPerSheet)
      store.make({ kind: 'keep-order', studyId: study.id, order: { ...order, nest } });
  };
  const { air } = conditionsNow(study);
  const toDraw = useMemo(
    () =>
      settings?.map(({ powerPct, speedMmPerS, parts }) => ({
        setting: { powerPct, speedMmPerS, passes: 1, ...(air === undefined ? {} : { air }) },
        parts,
      })),
    [settings, air],
  );
  const nextMmPerS = settings?.[0]?.speedMmPerS;
  return (
    <div className="page page-wide order">
      <div className="page-head" ref={head}>
        <h1>{title}</h1>
        <p className="page-lead">
          {studyText.stock(
            stock.material,
            stockThicknessMm(stock),
            stock.thicknessReadingsMm.length > 0,
          )}
        </p>
        <Invented is={study.isExample} />
        <NoteOf
          calls={pageOrderApi.keepOrder}
          name={`order.${order.id}`}
          kind="job"
          label={noteText.of.job}
          note={order.name}
          onKeep={(name) =>
            store.make({
              kind: 'keep-order',
              studyId: study.id,
              order: withOptional(order, 'name', name),
            })
          }
        />
        <Progress good={soFar.good} parts={order.parts} />
      </div>
      <div className="order-now">
        {last === undefined || verdict === undefined || lookFirst !== undefined ? null : (
          <LastSheet sheet={last} verdict={verdict} />
        )}
        {isDone ? (
          <Done study={study} order={order} />
        ) : (
          <>
            {question !== undefined && broke !== undefined ? (
              <Notice tone="stop">
                <p>{words.broke(broke)}</p>
              </Notice>
            ) : planned?.ok === false ? (
              <ProblemNotice problem={planned.problem} tone="stop" />
            ) : (
              <NextThing
                key={sheets.length}
                study={study}
                order={order}
                soFar={soFar}
                plan={plan}
                lookFirst={lookFirst}
                onLooked={() => setLooked(sheets.length)}
              />
            )}
            {settings === undefined || lookFirst !== undefined ? null : (
              <CountSheet
                key={`${String(sheets.length)} ${JSON.stringify(settings)}`}
                order={order}
                number={sheets.length + 1}
                settings={settings}
                onCount={count}
              />
            )}
            {toDraw === undefined || lookFirst !== undefined ? null : (
              <SheetFiles
                machine={study.machine}
                settings={toDraw}
                number={sheets.length + 1}
                drawing={drawing ?? undefined}
                onDrawing={takeDrawing}
              />
            )}
          </>
        )}
      </div>
      <div className="order-so-far">
        <Section title={words.climb}>
          {sheets.length === 0 ? (
            <p className="soft">{words.climbNone}</p>
          ) : (
            <>
              <ClimbPicture
                climb={climbOf(soFar)}
                {...(nextMmPerS === undefined || plan?.keeps === undefined
                  ? {}
                  : { next: { speedMmPerS: nextMmPerS, keeps: plan.keeps } })}
              />
              <p>
                <strong>{words.saved(savedByClimbing(order, soFar))}</strong>{' '}
                <span className="soft">{words.savedHow}</span>
              </p>
            </>
          )}
        </Section>
        <CountedSheets study={study} order={order} sheets={sheets} />
        <CarriedOver study={study} />
        <div className="actions">
          <Action onPress={() => print()}>{words.print}</Action>
          <ActionLink href={pageAt(pages.study, { id: study.id })}>{studyText.known}</ActionLink>
          {isDone ? null : (
            <SureAction
              calls={pageOrderApi.keepOrder}
              ask={words.endAsk}
              onPress={() =>
                store.make({
                  kind: 'keep-order',
                  studyId: study.id,
                  order: { ...order, endedAt: new Date().toISOString() },
                })
              }
            >
              {words.end}
            </SureAction>
          )}
        </div>
      </div>
    </div>
  );
};

const Progress = ({ good, parts }: { readonly good: number; readonly parts: number }) => (
  <div className="order-progress">
    <div
      className="order-bar"
      role="progressbar"
      aria-label={words.progress(good, parts)}
      aria-valuemin={0}
      aria-valuemax={parts}
      aria-valuenow={Math.min(good, parts)}
    >
      <div style={{ width: `${String(Math.min(100, (100 * good) / parts))}%` }} />
    </div>
    <p className="figure-text">{words.progress(good, parts)}</p>
  </div>
);

const Done = ({ study, order }: RunningOrderProps) => {
  const { sheets } = orderSoFar(order, study.tallies);
  const last = sheets.at(-1)?.tallies[0].setting.speedMmPerS;
  return (
    <Said what="answer" className="order-next">
      <p className="order-act">{order.endedAt === undefined ? words.done : words.ended}</p>
      {last === undefined ? null : <p>{words.doneLead(sheets.length, speedWords(last))}</p>}
      <div className="actions">
        <ActionLink
          kind="strong"
          calls={pageOrderApi.keepOrder}
          href={pageAt(pages.newOrder, { id: study.id })}
        >
          {words.again}
        </ActionLink>
      </div>
    </Said>
  );
};
