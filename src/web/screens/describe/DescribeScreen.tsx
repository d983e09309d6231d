import { pageApi } from '../../../wire/pageApi.ts';
import { Reserved } from '../../parts/page/Reserved.tsx';
import { useLocation } from 'wouter';
import type { Card } from '../../../core/card/card.ts';
import { likelyBoard } from '../../../core/study/likelyBoard.ts';
import { sheetsCut } from '../../../core/study/sheetsCut.ts';
import { namedMaterial, type NamedMaterial } from '../../../core/stock/namedMaterial.ts';
import type { Study } from '../../../core/study/study.ts';
import { lengthWords, describeText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { BoardForm, type Board } from '../../parts/board/BoardForm.tsx';
import { Form } from '../../parts/form/Form.tsx';
import { Invented } from '../../parts/invented/Invented.tsx';
import { MachineChoice, usePickedMachine } from '../../parts/machine/MachineChoice.tsx';
import { MaterialField, useWorkable } from '../../parts/material/MaterialField.tsx';
import { useDocumentTitle } from '../../parts/page/Page.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readThickness } from '../../parts/quantity/readers.ts';
import { newStudy } from '../../state/newStudy.ts';
import { useDraft } from '../../state/useDraft.ts';
import { useStudy, useWorkshop } from '../../state/workshop.tsx';
import { CellsForm } from './CellsForm.tsx';
import { DescribePicture } from './DescribePicture.tsx';
import { fitsOneCard } from './describedCard.ts';
import { useDescription } from './useDescription.ts';
import '../study/workbench.css';
import '../../parts/reader/reader.css';
import { pageAt, pages } from '../../state/pages.ts';

/** A card from the drawer: what stands on it, then to the reading. With a study: one more card of its sheet. */
export const DescribeScreen = ({ studyId }: { readonly studyId?: string }) => (
  <Reserved call={pageApi.addCard} title={words.title}>
    {studyId === undefined ? <Describe study={undefined} /> : <DescribeFor id={studyId} />}
  </Reserved>
);

const DescribeFor = ({ id }: { readonly id: string }) => {
  const { study } = useStudy(id);
  return study === undefined ? null : <Describe study={study} />;
};

const Describe = ({ study }: { readonly study: Study | undefined }) => {
  useDocumentTitle(words.title);
  const { store } = useWorkshop();
  const picked = usePickedMachine();
  const [, goTo] = useLocation();
  const name = study?.id ?? 'new';
  const [draft, setDraft, sent] = useDraft<Draft>({
    name: `describe.sheet.${name}`,
    initial: {
      named: study === undefined ? { material: 'plywood' } : namedMaterial(study.stock),
      thicknessMm: study?.stock.nominalThicknessMm ?? 3,
      board: study === undefined ? {} : likelyBoard(study),
    },
  });
  const { named, thicknessMm, board } = draft;
  const change = (part: Partial<Draft>): void => setDraft({ ...draft, ...part });
  const workable = useWorkable(named);
  const described = useDescription(name, board);
  const { card } = described;
  const holds = card === undefined || fitsOneCard(card);
  const ready = card !== undefined && holds && workable;

  const read = (made: Card): void => {
    const { batch } = board;
    const stock = {
      ...named,
      material: named.material.trim(),
      nominalThicknessMm: thicknessMm,
      ...(batch === undefined ? {} : { batch }),
    };
    const sheet = study ?? newStudy({ ...stock, thicknessReadingsMm: [] }, picked.machine);
    const studyId = sheet.id;
    const powers = new Set(made.rungs.map(({ setting }) => setting.powerPct));
    const [only] = powers;
    const ask = powers.size === 1 && only !== undefined ? { powerPct: only } : {};
    store.make(
      ...(study === undefined
        ? [{ kind: 'start', studyId, study: { ...sheet, ask } } as const]
        : []),
      { kind: 'add-card', studyId, card: made },
    );
    sent();
    described.sent();
    // The way back leads past the form, which would make the same card anew.
    goTo(pageAt(pages.card, { id: studyId, code: made.code }), { replace: true });
  };

  return (
    <div className="workbench">
      <div className="workbench-head">
        <h1>{words.title}</h1>
        <p className="page-lead">{words.lead}</p>
        <Invented is={study?.isExample === true} />
      </div>
      <div className="workbench-bench bench">
        <div className="workbench-stay stack">
          <DescribePicture described={described} />
          <p className="describe-count">{card === undefined ? '' : words.tapAway}</p>
        </div>
      </div>
      <Form
        className="workbench-paper"
        onSend={() => {
          if (ready) read(card);
        }}
      >
        <section className="section">
          <h2>{words.cells}</h2>
          <CellsForm name={name} described={described} />
        </section>
        {study === undefined ? (
          <section className="section">
            <h2>{words.sheet}</h2>
            <MaterialField
              label={words.material}
              hint={words.materialHint}
              value={named}
              onChange={(next) => change({ named: next })}
            />
            <QuantityField
              label={words.thickness}
              value={thicknessMm}
              show={lengthWords}
              parse={readThickness}
              onChange={(value) => {
                if (value !== undefined && value > 0) change({ thicknessMm: value });
              }}
            />
            <MachineChoice picked={picked} />
          </section>
        ) : null}
        <section className="section">
          <BoardForm
            board={board}
            before={study === undefined ? [] : sheetsCut(study)}
            onChange={(next) => change({ board: next })}
          />
        </section>
        <div className="actions">
          <Action kind="strong" isDisabled={!ready} submits>
            {words.read}
          </Action>
          <span className="soft">
            {card === undefined
              ? words.cannotYet
              : holds
                ? words.count(card.cells.length, card.rungs.length)
                : words.tooMany}
          </span>
        </div>
      </Form>
    </div>
  );
};

interface Draft {
  readonly named: NamedMaterial;
  readonly thicknessMm: number;
  readonly board: Board;
}
