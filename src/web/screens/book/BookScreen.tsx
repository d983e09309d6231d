import { lazy, useState } from 'react';
import { Link } from 'wouter';
import { inventedText, bookText as words, noteText, shellText } from '../../../words/texts.ts';
import { Action, ActionLink } from '../../parts/action/Action.tsx';
import { ExampleBanner } from '../../parts/example/ExampleBanner.tsx';
import { Fetched } from '../../parts/fetched/Fetched.tsx';
import { More } from '../../parts/more/More.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { Page } from '../../parts/page/Page.tsx';
import {
  promiseOfStanding,
  StandingMark,
  StandingRun,
} from '../../parts/standing/StandingSays.tsx';
import { TextLine } from '../../parts/quantity/TextLine.tsx';
import { OnlyByAir } from './OnlyByAir.tsx';
import { useBook, type BookEntry } from '../../state/queries.ts';
import { fetchPart } from '../../state/fetchPart.ts';
import { useDraft } from '../../state/useDraft.ts';
import { Transfer } from './Transfer.tsx';
import { pageAt, pages } from '../../state/pages.ts';
import './book.css';

/** Below the settings themselves. */
const SettingTrail = lazy(() =>
  fetchPart(async () => ({ default: (await import('../people/SettingTrail.tsx')).SettingTrail })),
);

/** So many stand on the page at first, and come with each asking for more. */
const pageOf = 25;
/** More than that is searched, not scrolled. */
const mostShown = 500;

/** The workshop's proven settings, to be searched; those for the sheet on the bed first. */
export const BookScreen = () => {
  // Kept in this tab, so that the way back from a setting leads to what was found.
  const [text, setText] = useDraft({ name: 'book.search', initial: '' });
  const [shown, setShown] = useState(pageOf);
  const { data, isPending, isError } = useBook({ text: text.trim(), limit: shown });
  const entries = data?.entries ?? [];
  const isEmpty = data !== undefined && entries.length === 0 && text.trim() === '';
  return (
    <Page title={words.title} lead={words.lead} width="two">
      <ExampleBanner />
      {isEmpty ? null : <TextLine label={words.search} value={text} onChange={setText} />}
      {isPending ? <p>{shellText.loading}</p> : null}
      {isError ? (
        <Notice tone="care">
          <p>{shellText.sending.away(0)}.</p>
        </Notice>
      ) : null}
      {isEmpty ? (
        <EmptyBook />
      ) : data !== undefined && entries.length === 0 ? (
        <p>{words.noneFound}</p>
      ) : (
        <>
          <ul className="book">
            {entries.map((found) => (
              <EntryLine key={found.entry.id} found={found} />
            ))}
          </ul>
          {data === undefined || data.total <= entries.length || shown >= mostShown ? null : (
            <div className="actions">
              <Action onPress={() => setShown(shown + pageOf)}>
                {words.showMore(entries.length, data.total)}
              </Action>
            </div>
          )}
        </>
      )}
      <div className="actions">
        <ActionLink href={pages.wall}>{words.wall}</ActionLink>
        <ActionLink href={pages.promises}>{words.promises}</ActionLink>
      </div>
      <Fetched waiting={null}>
        <SettingTrail />
      </Fetched>
      <div>
        <More title={words.out}>
          <Transfer />
        </More>
      </div>
    </Page>
  );
};

const EmptyBook = () => (
  <div className="stack">
    <p>{words.empty}</p>
    <div className="actions">
      <ActionLink kind="strong" href={pages.start}>
        {words.start}
      </ActionLink>
    </div>
  </div>
);

const EntryLine = ({ found }: { readonly found: BookEntry }) => {
  const { entry, standing } = found;
  const { material, nominalThicknessMm, measuredThicknessMm, batch } = entry.holdsFor;
  return (
    <li>
      <Link href={pageAt(pages.entry, { id: entry.id })} className="book-entry">
        <span className="book-stock">
          {words.stock(material, nominalThicknessMm, measuredThicknessMm)}
          {batch === undefined ? '' : `, ${words.batch(batch)}`}
          {entry.isExample ? ` · ${inventedText.mark}` : ''}
        </span>
        <span className="book-setting">
          <StandingRun standing={standing} kept={entry.setting} />
        </span>
        <span className="book-promise">
          <StandingMark standing={standing} /> {promiseOfStanding(standing, entry.surePct)}
        </span>
        {entry.note === undefined ? null : (
          <span className="small soft">{noteText.inList(entry.note)}</span>
        )}
        <OnlyByAir found={found} />
        <span className="book-code figure-text">{entry.code}</span>
      </Link>
    </li>
  );
};
