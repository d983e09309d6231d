import { pageApi } from '../../../wire/pageApi.ts';
import { Reserved } from '../../parts/page/Reserved.tsx';
import { useMay } from '../../state/role.ts';
import { useMemo, useState } from 'react';
import { useLocation, useSearch } from 'wouter';
import type { DesignedCard } from '../../../core/card/designCard.ts';
import { isStrengthOpen } from '../../../core/cutmodel/strengthOf.ts';
import type { Study } from '../../../core/study/study.ts';
import { toCutStudy } from '../../../core/study/toCutStudy.ts';
import { cardText as words, shellText } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { Notice, ProblemNotice } from '../../parts/notice/Notice.tsx';
import { useDocumentTitle } from '../../parts/page/Page.tsx';
import { Form } from '../../parts/form/Form.tsx';
import { Invented } from '../../parts/invented/Invented.tsx';
import { SheetPicture } from '../../parts/sheet/SheetPicture.tsx';
import { StrengthQuestion } from '../../parts/strength/StrengthQuestion.tsx';
import { designFor, type CardWish } from '../../state/designFor.ts';
import { keepTwin, nextCard, twinMade } from '../../state/nextCard.ts';
import { useAnswer } from '../../state/useAnswer.ts';
import { useDraft } from '../../state/useDraft.ts';
import { useStudy, useWorkshop } from '../../state/workshop.tsx';
import { CardFacts } from './CardFacts.tsx';
import { CardWishForm } from './CardWishForm.tsx';
import { firstWish } from './firstWish.ts';
import { Remarks } from './Remarks.tsx';
import '../study/workbench.css';
import '../../parts/reader/reader.css';
import { pageAt, pages } from '../../state/pages.ts';
import './cardScreen.css';

const cardActs = ['card'] as const;

/** A good card at once, everything adjustable, the picture live. */
export const CardScreen = ({ studyId }: { readonly studyId: string }) => {
  const { study } = useStudy(studyId);
  return study === undefined ? (
    <p className="page-wait">{shellText.loading}</p>
  ) : (
    <Reserved call={pageApi.addCard} title={words.title}>
      <Design study={study} />
    </Reserved>
  );
};

/** Nothing has been cut or said that tells how strong the machine is. */
const isFirstOfAll = ({ cards, tallies, habit }: Study): boolean =>
  cards.length === 0 && tallies.length === 0 && habit === undefined;

const Design = ({ study }: { readonly study: Study }) => {
  useDocumentTitle(words.title);
  const { store } = useWorkshop();
  const may = useMay();
  const [, goTo] = useLocation();
  const asksNext = useSearch().split('&').includes('next');
  const [next] = useState(() => (asksNext ? nextCard(study.id) : undefined));
  const [wish, setWish, sent] = useDraft<CardWish>({
    name: `card.${study.id}`,
    initial: () =>
      firstWish(
        study,
        next,
        next?.compared === undefined ? undefined : twinMade(study.id, next.compared),
      ),
    // Not by the wish, which has a code and a seed of its own.
    of: [study.cards.map(({ code }) => code), study.stock, study.ask, study.habit, next],
  });
  const { answer } = useAnswer(study, { from: 'any-sheet' });
  const designed = useMemo(() => designFor(study, wish, answer), [study, wish, answer]);

  // Asked once; it stays on the screen as long as that is open, so that a slip can be mended.
  const [asksStrength] = useState(() => isStrengthOpen(study.machine) && isFirstOfAll(study));

  const take = ({ card }: DesignedCard): void => {
    const studyId = study.id;
    const powers = new Set(card.rungs.map(({ setting }) => setting.powerPct));
    store.make(
      ...(powers.size === 1 && study.ask.powerPct === undefined
        ? [{ kind: 'head', studyId, head: { ask: { powerPct: wish.powerPct } } } as const]
        : []),
      { kind: 'add-card', studyId, card },
    );
    if (next?.compared !== undefined) keepTwin(studyId, card.code, next.compared);
    sent();
    // The card is made: Back leads to the sheet, not to a form that would make a second one.
    goTo(pageAt(pages.takeCard, { id: studyId, code: card.code }), { replace: true });
  };

  return (
    <div className="workbench">
      <div className="workbench-head">
        <h1>{words.title}</h1>
        <Invented is={study.isExample} />
      </div>
      <div className="workbench-bench bench">
        {designed.ok ? (
          <div className="design-board workbench-stay">
            <SheetPicture
              card={designed.value.card}
              words="as-cut"
              label={words.picture(designed.value.card.code)}
            />
            <CardFacts card={designed.value.card} machine={study.machine} />
          </div>
        ) : null}
      </div>
      <Form
        className="workbench-paper"
        onSend={() => {
          if (designed.ok) take(designed.value);
        }}
      >
        {designed.ok ? null : <ProblemNotice problem={designed.problem} tone="stop" />}
        {next?.compared === undefined ? null : (
          <Notice tone="say" title={words.compared(next.compared)}>
            <p>{next.compared.oneSheet ? words.comparedOneSheet : words.comparedOwnSheets}</p>
          </Notice>
        )}
        {asksStrength && may(pageApi.describeMachine) ? (
          <StrengthQuestion
            machine={study.machine}
            sheet={{
              material: study.stock.material,
              thicknessMm: toCutStudy(study).stock.thicknessMm,
            }}
            onChange={(machine) => {
              const addedAt = new Date().toISOString();
              store.make({
                kind: 'describe-machine',
                machineId: study.machineId,
                addedAt,
                machine,
              });
            }}
          />
        ) : null}
        <CardWishForm
          study={study}
          wish={wish}
          isCompared={next?.compared !== undefined}
          onChange={setWish}
        />
        {designed.ok ? (
          <>
            <Remarks remarks={designed.value.remarks} />
            <Cautions acts={cardActs} />
            <div className="actions">
              <Action kind="strong" submits>
                {words.take}
              </Action>
            </div>
          </>
        ) : null}
      </Form>
    </div>
  );
};
