import { pageApi } from '../../../wire/pageApi.ts';
import { Reserved } from '../../parts/page/Reserved.tsx';
import { useLocation } from 'wouter';
import type { Habit } from '../../../core/reading/tally.ts';
import type { Stock } from '../../../core/stock/stock.ts';
import type { Study } from '../../../core/study/study.ts';
import { sheetText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { Form } from '../../parts/form/Form.tsx';
import { HabitForm } from '../../parts/habit/HabitForm.tsx';
import { MachineChoice, usePickedMachine } from '../../parts/machine/MachineChoice.tsx';
import { useWorkable } from '../../parts/material/MaterialField.tsx';
import { Invented } from '../../parts/invented/Invented.tsx';
import { Beside } from '../../parts/page/Beside.tsx';
import { Page, Section } from '../../parts/page/Page.tsx';
import { useDraft } from '../../state/useDraft.ts';
import { newStudy } from '../../state/newStudy.ts';
import { useStudy, useWorkshop } from '../../state/workshop.tsx';
import { StockForm } from './StockForm.tsx';
import { pageAt, pages } from '../../state/pages.ts';

/** A new sheet; or, with a study, the facts of its sheet corrected. */
export const SheetScreen = ({ studyId }: { readonly studyId?: string }) => (
  <Reserved call={pageApi.startStudy} title={words.title}>
    {studyId === undefined ? <NewSheet /> : <ChangeSheet id={studyId} />}
  </Reserved>
);

const newMaterial = ['newMaterial'] as const;
const blank: Stock = { material: '', nominalThicknessMm: 3, thicknessReadingsMm: [] };

const NewSheet = () => {
  const { store } = useWorkshop();
  const picked = usePickedMachine();
  const [, goTo] = useLocation();
  const [stock, setStock, stockSent] = useDraft<Stock>({ name: 'sheet', initial: blank });
  const [habit, setHabit, habitSent] = useDraft<Habit | undefined>({
    name: 'sheet.habit',
    initial: undefined,
  });
  const ready = useWorkable(stock);
  const begin = (then: 'study' | 'newCard'): void => {
    const study = newStudy({ ...stock, material: stock.material.trim() }, picked.machine);
    const whole: Study =
      habit === undefined ? study : { ...study, habit, ask: { powerPct: habit.powerPct } };
    store.make({ kind: 'start', studyId: study.id, study: whole });
    stockSent();
    habitSent();
    // The way back leads to this sheet's facts, not to an empty form that would make another sheet of it.
    goTo(pageAt(pages.sheet, { id: study.id }), { replace: true });
    goTo(pageAt(pages[then], { id: study.id }));
  };
  return (
    <Page title={words.newTitle} lead={words.lead} width="two">
      <Form className="page-form" onSend={() => begin('newCard')}>
        <Beside>
          <>
            <StockForm stock={stock} onChange={setStock} />
            <MachineChoice picked={picked} />
          </>
          <>
            <Section title={words.now}>
              <p className="soft">{words.nowHint}</p>
              <HabitForm
                name="sheet"
                habit={habit}
                onChange={(next) => setHabit(next ?? undefined)}
              />
            </Section>
            <Cautions acts={newMaterial} />
          </>
        </Beside>
        <div className="actions">
          <Action kind="strong" isDisabled={!ready} submits>
            {words.design}
          </Action>
          {habit === undefined ? null : (
            <Action isDisabled={!ready} onPress={() => begin('study')}>
              {words.answerNow}
            </Action>
          )}
        </div>
      </Form>
    </Page>
  );
};

const ChangeSheet = ({ id }: { readonly id: string }) => {
  const { study } = useStudy(id);
  return study === undefined ? null : <ChangeStock study={study} />;
};

const ChangeStock = ({ study }: { readonly study: Study }) => {
  const { store } = useWorkshop();
  const [, goTo] = useLocation();
  const [stock, setStock, sent] = useDraft({ name: `sheet.${study.id}`, initial: study.stock });
  const picked = usePickedMachine(study.machineId);
  const ready = useWorkable(stock);
  const save = (): void => {
    const head = {
      stock: { ...stock, material: stock.material.trim() },
      ...(study.isExample || picked.machine.id === study.machineId ? {} : { of: picked.machine }),
    };
    store.make({ kind: 'head', studyId: study.id, head });
    sent();
    goTo(pageAt(pages.study, { id: study.id }));
  };
  return (
    <Page title={words.title}>
      <Invented is={study.isExample} />
      <Form className="page-form" onSend={save}>
        <StockForm stock={stock} onChange={setStock} />
        {study.isExample ? null : <MachineChoice picked={picked} />}
        <div className="actions">
          <Action kind="strong" isDisabled={!ready} submits>
            {words.save}
          </Action>
        </div>
      </Form>
    </Page>
  );
};
