import { pageApi } from '../../../wire/pageApi.ts';
import { lazy, useCallback, useState } from 'react';
import type { Card } from '../../../core/card/card.ts';
import type { ReadingEvent } from '../../../core/reading/readingEvent.ts';
import { edgeKindOf } from '../../../core/stock/edgeKind.ts';
import { flawKindOf } from '../../../core/stock/flawKind.ts';
import { stockThicknessMm } from '../../../core/stock/stockThickness.ts';
import type { Study } from '../../../core/study/study.ts';
import { readingText, shellText, tallyText, studyText as words } from '../../../words/texts.ts';
import { Action, ActionLink } from '../../parts/action/Action.tsx';
import { AnswerPanel } from '../../parts/answer/AnswerPanel.tsx';
import { Fetched } from '../../parts/fetched/Fetched.tsx';
import { OnlyIfCut } from '../../parts/material/OnlyIfCut.tsx';
import { Invented } from '../../parts/invented/Invented.tsx';
import { Page, useDocumentTitle } from '../../parts/page/Page.tsx';
import { OrderLink } from '../../parts/order/OrderLink.tsx';
import { CardReader } from '../../parts/reader/CardReader.tsx';
import { useReading } from '../../parts/reader/useReading.ts';
import type { CallProblem } from '../../state/call.ts';
import { fetchPart } from '../../state/fetchPart.ts';
import { useKeptOf } from '../../state/useKeptOf.ts';
import { useStudy, useWorkshop } from '../../state/workshop.tsx';
import { CardTabs } from './CardTabs.tsx';
import { OnTheBed } from './OnTheBed.tsx';
import { StripOf } from './StripOf.tsx';
import { NextCard } from './NextCard.tsx';
import { WhatElse } from './WhatElse.tsx';
import { pageAt, pages } from '../../state/pages.ts';
import './workbench.css';

/** Most cards have none: the first view needs none of it. */
const CardPhotos = lazy(() =>
  fetchPart(async () => ({ default: (await import('../photo/CardPhotos.tsx')).CardPhotos })),
);

/** Below what is read. */
const StudyNotes = lazy(() =>
  fetchPart(async () => ({ default: (await import('./StudyNotes.tsx')).StudyNotes })),
);

export interface StudyScreenProps {
  readonly id: string;
  /** The card to show first; else the last one. */
  readonly code?: string;
}

/** One sheet: its cards on the bench to be read, and what they say on paper beside it. */
export const StudyScreen = ({ id, code }: StudyScreenProps) => {
  const { study, problem, loading } = useStudy(id);
  if (study !== undefined) return <Opened study={study} code={code} />;
  if (loading) return <p className="page-wait">{shellText.loading}</p>;
  return (
    <Page title={words.gone} lead={isGone(problem) ? words.goneMore : words.away}>
      <div className="actions">
        <ActionLink kind="strong" href={pages.start}>
          {shellText.toStart}
        </ActionLink>
      </div>
    </Page>
  );
};

const isGone = (problem: CallProblem | undefined): boolean =>
  problem === undefined || (problem.kind === 'refused' && problem.status === 404);

const Opened = ({ study, code }: { readonly study: Study; readonly code: string | undefined }) => {
  const [chosen, setChosen] = useState(code);
  const kept = useKeptOf(study.id);
  const lastKept = kept?.[0];
  const card = study.cards.find((each) => each.code === chosen) ?? study.cards.at(-1);
  const stock = words.stock(
    study.stock.material,
    stockThicknessMm(study.stock),
    study.stock.thicknessReadingsMm.length > 0,
  );
  useDocumentTitle(`${readingText.question} ${stock}`);
  return (
    <div className="workbench">
      <div className="workbench-head">
        <h1>{card === undefined ? words.known : readingText.question}</h1>
        <p className="page-lead">
          {stock}
          {study.stock.batch === undefined ? '' : words.batch(study.stock.batch)}
        </p>
        <Invented is={study.isExample} />
        <OnTheBed study={study} />
        <div className="actions">
          <OrderLink studyId={study.id} />
        </div>
      </div>
      <div className="workbench-bench bench">
        {card === undefined ? (
          <EmptyBench study={study} />
        ) : (
          <div className="workbench-stay">
            <CardTabs study={study} card={card} onChoose={setChosen} />
            <ReadOne
              key={card.code}
              study={study}
              card={card}
              isKept={
                kept?.some(({ entry }) => entry.cameFrom.cardCodes.includes(card.code)) ?? false
              }
            />
          </div>
        )}
      </div>
      <div className="workbench-paper">
        {card === undefined ? null : <StripOf study={study} card={card} />}
        <OnlyIfCut stock={study.stock} studyId={study.id}>
          <AnswerPanel study={study} kept={lastKept} />
          <NextCard study={study} />
          <WhatElse study={study} card={card} />
        </OnlyIfCut>
        <Fetched>
          <StudyNotes study={study} card={card} />
        </Fetched>
      </div>
    </div>
  );
};

interface ReadOneProps {
  readonly study: Study;
  readonly card: Card;
  /** A kept setting stands on it. */
  readonly isKept: boolean;
}

/** A card behind a kept setting is locked: what brushes over it in passing changes nothing. */
const ReadOne = ({ study, card, isKept }: ReadOneProps) => {
  const { store } = useWorkshop();
  const [isOpened, setOpened] = useState(false);
  const isLocked = isKept && !isOpened;
  const { id: studyId } = study;
  const say = useCallback(
    (events: readonly ReadingEvent[]) => {
      if (!isLocked) store.make({ kind: 'read', studyId, events });
    },
    [store, studyId, isLocked],
  );
  const reading = useReading(card, study.events, say);
  return (
    <>
      {isLocked ? (
        <div className="locked">
          <p>{words.locked}</p>
          <Action onPress={() => setOpened(true)}>{words.unlock}</Action>
        </div>
      ) : null}
      <div inert={isLocked}>
        <CardReader
          reading={reading}
          flaws={flawKindOf(study.stock.material)}
          edges={edgeKindOf(study.stock.material)}
        />
        <div className="actions">
          <ActionLink kind="quiet" href={pageAt(pages.readPhoto, { id: studyId, code: card.code })}>
            {words.readPhoto}
          </ActionLink>
        </div>
        <Fetched>
          <CardPhotos id={studyId} code={card.code} />
        </Fetched>
      </div>
    </>
  );
};

const EmptyBench = ({ study }: { readonly study: Study }) => (
  <div className="stack">
    {study.habit === undefined ? null : (
      <p>{words.runsAt(words.runs[study.habit.comesOut], study.habit)}</p>
    )}
    {study.tallies.map((tally) => (
      <p key={tally.id}>
        {tallyText.at(tally.setting)}: {tallyText.line(tally)}.
      </p>
    ))}
    <p>
      {words.noCard} {words.noCardMore}
    </p>
    <div className="actions">
      <ActionLink calls={pageApi.addCard} href={pageAt(pages.newCard, { id: study.id })}>
        {words.addDesigned}
      </ActionLink>
      <ActionLink calls={pageApi.addCard} href={pageAt(pages.describe, { id: study.id })}>
        {words.addDescribed}
      </ActionLink>
    </div>
  </div>
);
