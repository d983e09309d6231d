import { pageApi } from '../../../wire/pageApi.ts';
import { Reserved } from '../../parts/page/Reserved.tsx';
import { useLocation } from 'wouter';
import type { NamedMaterial } from '../../../core/stock/namedMaterial.ts';
import type { Habit, Tally } from '../../../core/reading/tally.ts';
import { lengthWords, habitText, sheetText as words, tallyText } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Choice } from '../../parts/choice/Choice.tsx';
import { Form } from '../../parts/form/Form.tsx';
import { MachineChoice, usePickedMachine } from '../../parts/machine/MachineChoice.tsx';
import { MaterialField, useWorkable } from '../../parts/material/MaterialField.tsx';
import { Beside } from '../../parts/page/Beside.tsx';
import { Page, Section } from '../../parts/page/Page.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readSize, readThickness } from '../../parts/quantity/readers.ts';
import { SpeedAndPower, type SpokenSetting } from '../../parts/quantity/SpeedAndPower.tsx';
import { cameOut, noneCounted, TallyCounts, type Counts } from '../../parts/tally/TallyCounts.tsx';
import { newId } from '../../state/newId.ts';
import { newStudy } from '../../state/newStudy.ts';
import { useDraft } from '../../state/useDraft.ts';
import { useWorkshop } from '../../state/workshop.tsx';
import { pageAt, pages } from '../../state/pages.ts';

interface Draft {
  readonly named: NamedMaterial;
  readonly nominalThicknessMm: number;
  readonly spoken: SpokenSetting;
  readonly comesOut?: Habit['comesOut'];
  readonly counts: Counts;
  readonly partLengthMm?: number | undefined;
}

const blank: Draft = {
  named: { material: '' },
  nominalThicknessMm: 3,
  spoken: {},
  counts: noneCounted,
};

/** A first answer without any card: what the workshop runs, whether it comes out, or an order that was counted. */
export const RunScreen = () => (
  <Reserved call={pageApi.startStudy} title={words.title}>
    <Run />
  </Reserved>
);

const Run = () => {
  const { store } = useWorkshop();
  const picked = usePickedMachine();
  const [, goTo] = useLocation();
  const [draft, setDraft, sent] = useDraft({ name: 'run', initial: blank });
  const change = (part: Partial<Draft>): void => setDraft({ ...draft, ...part });
  const { named, nominalThicknessMm, spoken, comesOut, counts, partLengthMm } = draft;
  const { speedMmPerS, powerPct } = spoken;
  const out = cameOut(counts);
  const workable = useWorkable(named);
  const missing = !workable
    ? words.missing.material
    : speedMmPerS === undefined || powerPct === undefined
      ? words.missing.setting
      : comesOut === undefined && counts.cut === 0
        ? words.missing.outcome
        : counts.cut > 0 && partLengthMm === undefined
          ? words.missing.length
          : undefined;

  const see = (): void => {
    if (speedMmPerS === undefined || powerPct === undefined) return;
    const material = named.material.trim();
    const stock = { ...named, material, nominalThicknessMm, thicknessReadingsMm: [] };
    const blank = newStudy(stock, picked.machine);
    const promise = partLengthMm === undefined ? blank.promise : { ...blank.promise, partLengthMm };
    const { id: studyId } = blank;
    const habit = comesOut === undefined ? {} : { habit: { powerPct, speedMmPerS, comesOut } };
    store.make({
      kind: 'start',
      studyId,
      study: { ...blank, ...habit, promise, ask: { powerPct } },
    });
    if (counts.cut > 0) {
      const { hangs, stays, spoilt } = counts;
      const setting = { powerPct, speedMmPerS, passes: 1 };
      const tally: Tally = {
        setting,
        out,
        hangs,
        stays,
        spoilt,
        partLengthMm: promise.partLengthMm,
      };
      store.make({
        kind: 'tally',
        studyId,
        tally: { ...tally, id: newId(), at: new Date().toISOString() },
      });
    }
    sent();
    goTo(pageAt(pages.study, { id: studyId }), { replace: true });
  };

  return (
    <Page title={words.runTitle} lead={words.runLead} width="two">
      <Form className="page-form" onSend={see}>
        <Beside>
          <div className="stack">
            <MaterialField
              label={words.material}
              hint={words.materialHint}
              value={named}
              onChange={(next) => change({ named: next })}
            />
            <QuantityField
              label={words.thickness}
              value={nominalThicknessMm}
              show={lengthWords}
              parse={readThickness}
              onChange={(mm) => {
                if (mm !== undefined) change({ nominalThicknessMm: mm });
              }}
            />
            <MachineChoice picked={picked} />
            <div className="field-row">
              <SpeedAndPower
                {...spoken}
                onChange={(part) => change({ spoken: { ...spoken, ...part } })}
              />
            </div>
            <Choice
              label={habitText.comesOut}
              value={comesOut}
              options={(['always', 'nearly', 'often-not'] as const).map((value) => ({
                value,
                label: habitText.comes[value],
              }))}
              onChange={(next) => change({ comesOut: next })}
            />
          </div>
          <Section title={words.order}>
            <p className="soft">{words.orderHint}</p>
            <TallyCounts
              material={named.material}
              counts={counts}
              onChange={(next) => change({ counts: next })}
            />
            {counts.cut === 0 ? null : (
              <QuantityField
                label={tallyText.length}
                hint={tallyText.lengthHint}
                optional
                value={partLengthMm}
                show={lengthWords}
                parse={readSize}
                onChange={(next) => change({ partLengthMm: next })}
              />
            )}
          </Section>
        </Beside>
        <div className="actions">
          <Action kind="strong" isDisabled={missing !== undefined || out < 0} submits>
            {words.see}
          </Action>
          <span className="soft">{missing}</span>
        </div>
      </Form>
    </Page>
  );
};
