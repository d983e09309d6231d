import { useState } from 'react';
import { stockThicknessMm } from '../../../core/stock/stockThickness.ts';
import type { Stock } from '../../../core/stock/stock.ts';
import { asideText as words, shellText, studyText } from '../../../words/texts.ts';
import { Action, ActionLink } from '../../parts/action/Action.tsx';
import { SureAction } from '../../parts/action/SureAction.tsx';
import { Page, Section } from '../../parts/page/Page.tsx';
import { TextLine } from '../../parts/quantity/TextLine.tsx';
import { Field } from '../../parts/quantity/Field.tsx';
import { useStudies } from '../../state/queries.ts';
import { usePageStoreState, useKeptStudy, useWorkshop } from '../../state/workshop.tsx';
import { asideGroups, ofCard, type AsideGroup } from './asideGroups.ts';
import { pages } from '../../state/pages.ts';

/** What the server would not take: to be looked at, sent again, put on another card, or thrown away. */
export const AsideScreen = () => {
  const { aside } = usePageStoreState();
  const groups = asideGroups(aside);
  return (
    <Page title={words.title} lead={groups.length === 0 ? words.none : words.lead}>
      {groups.map((group) => (
        <Group key={group.key} group={group} />
      ))}
      <div className="actions">
        <ActionLink href={pages.start}>{shellText.toStart}</ActionLink>
      </div>
    </Page>
  );
};

/** So many sheets are offered, the last touched first; others are found by their words. */
const mostOffered = 50;

const nameOf = (stock: Stock): string =>
  studyText.stock(stock.material, stockThicknessMm(stock), stock.thicknessReadingsMm.length > 0);

const Group = ({ group }: { readonly group: AsideGroup }) => {
  const { store } = useWorkshop();
  const study = useKeptStudy(group.studyId ?? '');
  const sheet =
    group.studyId === undefined ? words.machine : words.sheet(study && nameOf(study.stock));
  const { all, events, cardCode } = group;
  const changes = all.map(({ change }) => change);
  return (
    <Section title={cardCode === undefined ? sheet : `${sheet}, ${words.onCard(cardCode)}`}>
      <p>
        <strong>{group.message}</strong> {group.remedy}
      </p>
      <ul>
        {events.map((event) => (
          <li key={event.id}>
            {words.said(event)} · {new Date(event.at).toLocaleString()}
          </li>
        ))}
        {changes.map((change) =>
          change.kind === 'read' ? null : <li key={change.kind}>{words.did[change.kind]}</li>,
        )}
      </ul>
      {cardCode === undefined ? null : <ToCard group={group} />}
      <div className="actions">
        <Action onPress={() => store.settleAside(all, changes)}>{words.again}</Action>
        <SureAction ask={words.dropAsk(all.length)} onPress={() => store.settleAside(all, [])}>
          {words.drop}
        </SureAction>
      </div>
    </Section>
  );
};

/** Any card that the workshop has; the one that was refused is offered no more. */
const ToCard = ({ group }: { readonly group: AsideGroup }) => {
  const { store } = useWorkshop();
  const [text, setText] = useState('');
  const { data } = useStudies({ text: text.trim(), limit: mostOffered });
  const [picked, setPicked] = useState('');
  const cards = (data?.studies ?? []).flatMap(({ id, stock, cardCodes }) =>
    cardCodes
      .filter((code) => id !== group.studyId || code !== group.cardCode)
      .map((cardCode) => ({ studyId: id, cardCode, name: `${nameOf(stock)}: ${cardCode}` })),
  );
  const target = cards.find(({ studyId, cardCode }) => `${studyId} ${cardCode}` === picked);
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault();
        if (target !== undefined) store.settleAside(group.all, [ofCard(group, target)]);
      }}
    >
      {data === undefined || data.total <= mostOffered ? null : (
        <TextLine label={words.findSheet} value={text} onChange={setText} />
      )}
      <Field label={words.toCard}>
        {(box) => (
          <select
            {...box}
            className="field-input"
            value={picked}
            onChange={({ target: { value } }) => setPicked(value)}
          >
            <option value="">{words.pickNone}</option>
            {cards.map(({ studyId, cardCode, name }) => (
              <option key={`${studyId} ${cardCode}`} value={`${studyId} ${cardCode}`}>
                {name}
              </option>
            ))}
          </select>
        )}
      </Field>
      <div className="actions">
        <Action
          isDisabled={target === undefined}
          onPress={() => {
            if (target !== undefined) store.settleAside(group.all, [ofCard(group, target)]);
          }}
        >
          {words.send}
        </Action>
      </div>
    </form>
  );
};
