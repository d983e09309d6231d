import { pageApi } from '../../../wire/pageApi.ts';
import { IfMay } from '../../parts/action/IfMay.tsx';
import { useLocation } from 'wouter';
import type { Card } from '../../../core/card/card.ts';
import { partLengthOf } from '../../../core/study/promiseOf.ts';
import type { Study } from '../../../core/study/study.ts';
import { studyText as words, timeText } from '../../../words/texts.ts';
import { ActionLink } from '../../parts/action/Action.tsx';
import { SureAction } from '../../parts/action/SureAction.tsx';
import { HabitForm } from '../../parts/habit/HabitForm.tsx';
import { More } from '../../parts/more/More.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { MeasuredTime } from '../../parts/measuredTime/MeasuredTime.tsx';
import { CountedOrder } from '../../parts/tally/CountedOrder.tsx';
import { TallyForm } from '../../parts/tally/TallyForm.tsx';
import { newId } from '../../state/newId.ts';
import { useWorkshop } from '../../state/workshop.tsx';
import { pageAt, pages } from '../../state/pages.ts';

export interface WhatElseProps {
  readonly study: Study;
  readonly card: Card | undefined;
}

/** Everything beside the card that is an observation too: a habit, an order, another card; and the sheet itself. */
export const WhatElse = ({ study, card }: WhatElseProps) => {
  const { store } = useWorkshop();
  const [, goTo] = useLocation();
  const { id: studyId } = study;
  return (
    <Section title={words.also}>
      <div>
        <IfMay call={pageApi.changeStudy}>
          <More title={words.habit}>
            <HabitForm
              name={studyId}
              habit={study.habit}
              onChange={(habit) => store.make({ kind: 'head', studyId, head: { habit } })}
            />
          </More>
        </IfMay>
        <More title={words.tally}>
          <TallyForm
            name={studyId}
            material={study.stock.material}
            partLengthMm={partLengthOf(study)}
            onSave={(tally) =>
              store.make({
                kind: 'tally',
                studyId,
                tally: { ...tally, id: newId(), at: new Date().toISOString() },
              })
            }
          />
          <TalliesOf study={study} />
        </More>
        {card?.origin === 'designed' ? (
          <More title={timeText.title}>
            <MeasuredTime key={card.code} study={study} card={card} />
          </More>
        ) : null}
        <More title={words.sheetFacts}>
          <div className="actions">
            <ActionLink calls={pageApi.changeStudy} href={pageAt(pages.sheet, { id: studyId })}>
              {words.changeSheet}
            </ActionLink>
            <ActionLink href={pages.machine}>{words.changeMachine}</ActionLink>
            <ActionLink calls={pageApi.addCard} href={pageAt(pages.newCard, { id: studyId })}>
              {words.addDesigned}
            </ActionLink>
            <ActionLink calls={pageApi.addCard} href={pageAt(pages.describe, { id: studyId })}>
              {words.addDescribed}
            </ActionLink>
            <ActionLink href={`${pages.compare}?sheet=${studyId}`}>{words.compare}</ActionLink>
          </div>
          {card === undefined ? null : (
            <div className="actions">
              <ActionLink href={pageAt(pages.takeCard, { id: studyId, code: card.code })}>
                {words.take}
              </ActionLink>
              <SureAction
                ask={words.removeCardAsk}
                calls={pageApi.removeCard}
                onPress={() => {
                  store.make({ kind: 'remove-card', studyId, code: card.code });
                  goTo(pageAt(pages.study, { id: studyId }));
                }}
              >
                {words.removeCard(card.code)}
              </SureAction>
            </div>
          )}
          <SureAction
            ask={words.removeSheetAsk}
            calls={pageApi.removeStudy}
            onPress={() => {
              store.make({ kind: 'remove-study', studyId });
              goTo(`${pages.bed}?removed=${studyId}`);
            }}
          >
            {words.removeSheet}
          </SureAction>
        </More>
      </div>
    </Section>
  );
};

const TalliesOf = ({ study }: { readonly study: Study }) => {
  const { store } = useWorkshop();
  if (study.tallies.length === 0) return null;
  return (
    <ul className="sheets">
      {study.tallies.map((tally) => (
        <CountedOrder
          material={study.stock.material}
          key={tally.id}
          tally={tally}
          onCorrect={(corrected) =>
            store.make({ kind: 'correct-tally', studyId: study.id, tally: corrected })
          }
          onRemove={() =>
            store.make({ kind: 'remove-tally', studyId: study.id, tallyId: tally.id })
          }
        />
      ))}
    </ul>
  );
};
