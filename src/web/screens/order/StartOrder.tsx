import { machineFileEndings } from '../../../formats/machineFiles.ts';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { nestFromDrawing } from '../../../app/drawing/nestFromDrawing.ts';
import { omit } from '../../../core/omit.ts';
import { orderAims } from '../../../core/plan/planWish.ts';
import { problemOf, type Problem } from '../../../core/problem.ts';
import { stockThicknessMm } from '../../../core/stock/stockThickness.ts';
import { orderDefaults, type OrderDefaults } from '../../../core/study/orderDefaults.ts';
import { promiseOf } from '../../../core/study/promiseOf.ts';
import type { NestSketch } from '../../../core/study/startedOrder.ts';
import type { Study } from '../../../core/study/study.ts';
import { refuseBySize } from '../../../formats/drawingSize.ts';
import {
  durationWords,
  lengthWords,
  noteText,
  powerWords,
  orderRunText as words,
  studyText,
} from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Choice } from '../../parts/choice/Choice.tsx';
import { FilePick } from '../../parts/file/FilePick.tsx';
import { Form } from '../../parts/form/Form.tsx';
import { Invented } from '../../parts/invented/Invented.tsx';
import { More } from '../../parts/more/More.tsx';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Page } from '../../parts/page/Page.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import {
  readCutPower,
  readHoldUp,
  readNotOut,
  readOrderParts,
  readSize,
} from '../../parts/quantity/readers.ts';
import { TextLine } from '../../parts/quantity/TextLine.tsx';
import { newId } from '../../state/newId.ts';
import { useDraft } from '../../state/useDraft.ts';
import { withOptional } from '../../state/withOptional.ts';
import { useWorkshop } from '../../state/workshop.tsx';
import { CarriedOver } from './CarriedOver.tsx';
import { Said } from '../../parts/said/Said.tsx';
import { pageAt, pages } from '../../state/pages.ts';

interface Draft {
  readonly said: OrderDefaults;
  readonly nest?: NestSketch;
}

/** An order begun: three fields, the rest from what is known. */
export const StartOrder = ({ study }: { readonly study: Study }) => {
  const { store } = useWorkshop();
  const [, goTo] = useLocation();
  const [draft, setDraft, sent] = useDraft<Draft>({
    name: `order.${study.id}`,
    initial: () => ({ said: orderDefaults(study) }),
  });
  const [problem, setProblem] = useState<Problem>();
  const { said, nest } = draft;
  const say = (part: Partial<OrderDefaults>): void =>
    setDraft({ ...draft, said: { ...said, ...part } });
  const { partLengthMm, powerPct } = said;
  const { outOf100, surePct } = promiseOf(study);
  const missing =
    partLengthMm === undefined
      ? words.missing.length
      : powerPct === undefined
        ? words.missing.power
        : undefined;
  const mostPct = study.machine.maxPowerPct;
  const aboveMachine =
    powerPct !== undefined && powerPct > mostPct
      ? problemOf('power-above-machine', { powerPct, mostPct })
      : undefined;
  const isPowerKnown = orderDefaults(study).powerPct !== undefined;
  const start = (): void => {
    if (partLengthMm === undefined || powerPct === undefined) return;
    const name = said.name?.trim();
    const order = {
      ...withOptional(said, 'name', name === '' ? undefined : name),
      partLengthMm,
      powerPct,
      id: newId(),
      startedAt: new Date().toISOString(),
    };
    store.make({
      kind: 'keep-order',
      studyId: study.id,
      order: nest === undefined ? order : { ...order, nest },
    });
    sent();
    goTo(pageAt(pages.order, { id: study.id }), { replace: true });
  };
  const readDrawing = (_name: string, text: string): void => {
    const read = nestFromDrawing(text);
    setProblem(read.ok ? undefined : read.problem);
    if (!read.ok) return;
    const { nest: drawn, partLengthMm: longest } = read.value;
    const parts = { partLengthMm: longest, partsPerSheet: drawn.parts.length };
    setDraft({ said: { ...said, ...parts }, nest: drawn });
  };
  const count = (label: string, value: number, name: 'parts' | 'partsPerSheet') => (
    <QuantityField
      label={label}
      value={value}
      show={String}
      parse={readOrderParts}
      onChange={(read) => {
        if (read === undefined) return;
        const next = { ...said, [name]: read };
        // Counted by hand where the picture no longer fits.
        if (name === 'partsPerSheet' && nest !== undefined && nest.parts.length !== read)
          setDraft({ said: next });
        else say({ [name]: read });
      }}
    />
  );
  const seconds = (name: 'knife' | 'recut' | 'type' | 'count') => (
    <QuantityField
      label={words.costFields[name]}
      value={said.costS[name]}
      show={durationWords}
      parse={readHoldUp}
      onChange={(value) => {
        if (value !== undefined) say({ costS: { ...said.costS, [name]: value } });
      }}
    />
  );
  const { stock } = study;
  return (
    <Page
      title={words.start}
      lead={studyText.stock(
        stock.material,
        stockThicknessMm(stock),
        stock.thicknessReadingsMm.length > 0,
      )}
    >
      <Invented is={study.isExample} />
      <Form
        onSend={() => {
          if (missing === undefined) start();
        }}
      >
        <p className="soft">{words.startLead}</p>
        <TextLine
          label={noteText.of.job}
          hint={noteText.jobHint}
          value={said.name ?? ''}
          onChange={(name) =>
            setDraft({ ...draft, said: withOptional(said, 'name', name === '' ? undefined : name) })
          }
        />
        <div className="field-row">
          {count(words.parts, said.parts, 'parts')}
          {count(words.perSheet, said.partsPerSheet, 'partsPerSheet')}
        </div>
        <QuantityField
          label={words.length}
          hint={words.lengthHint}
          optional
          value={partLengthMm}
          show={lengthWords}
          parse={readSize}
          onChange={(mm) => {
            const rest = omit(said, 'partLengthMm');
            setDraft({ ...draft, said: mm === undefined ? rest : { ...rest, partLengthMm: mm } });
          }}
        />
        {isPowerKnown ? null : (
          <QuantityField
            label={words.power}
            optional
            value={powerPct}
            show={powerWords}
            problem={aboveMachine}
            parse={readCutPower}
            onChange={(pct) => {
              const rest = omit(said, 'powerPct');
              setDraft({ ...draft, said: pct === undefined ? rest : { ...rest, powerPct: pct } });
            }}
          />
        )}
        <Choice
          label={words.wish}
          lay="list"
          value={said.wish}
          options={orderAims.map((value) => ({
            value,
            label: words.wishes[value].label,
            more:
              value === 'promise'
                ? words.wishes.promise.more(outOf100, surePct)
                : words.wishes.cheapest.more(said.acceptNotOutOf100),
          }))}
          onChange={(wish) => say({ wish })}
        />
        <FilePick
          label={words.drawing}
          accept={machineFileEndings}
          refuse={refuseBySize}
          onText={readDrawing}
        />
        {nest === undefined || partLengthMm === undefined ? null : (
          <Said what="done">{words.drawingHas(nest.parts.length, partLengthMm)}</Said>
        )}
        {problem === undefined ? null : <ProblemNotice problem={problem} tone="stop" />}
        <More title={words.costs}>
          <div className="field-row">
            {seconds('knife')}
            {seconds('recut')}
          </div>
          <div className="field-row">
            {seconds('type')}
            {seconds('count')}
          </div>
          {said.wish === 'cheapest' ? (
            <QuantityField
              label={words.accept}
              value={said.acceptNotOutOf100}
              show={String}
              parse={readNotOut}
              onChange={(value) => {
                if (value !== undefined) say({ acceptNotOutOf100: value });
              }}
            />
          ) : null}
        </More>
        <CarriedOver study={study} />
        <div className="actions">
          <Action kind="strong" submits isDisabled={missing !== undefined}>
            {words.startIt}
          </Action>
          <span className="soft">{missing}</span>
        </div>
      </Form>
    </Page>
  );
};
