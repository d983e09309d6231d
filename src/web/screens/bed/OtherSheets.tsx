import { useState } from 'react';
import { Link } from 'wouter';
import { stockThicknessMm } from '../../../core/stock/stockThickness.ts';
import { inventedText, bedText as words, noteText, studyText } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { TextLine } from '../../parts/quantity/TextLine.tsx';
import { useStudies } from '../../state/queries.ts';
import { pageAt, pages } from '../../state/pages.ts';

/** So many stand there at first, and come with each asking for more. */
const pageOf = 20;
/** More than that is searched, not scrolled. */
const mostShown = 500;

/** The sheets that lay on the bed before; where they are many, to be searched. */
export const OtherSheets = ({ except }: { readonly except: string }) => {
  const [text, setText] = useState('');
  const [shown, setShown] = useState(pageOf);
  const { data } = useStudies({ text: text.trim(), limit: shown + 1 });
  const others = data?.studies.filter(({ id }) => id !== except).slice(0, shown) ?? [];
  const isSearched = text !== '';
  if (data === undefined || (others.length === 0 && !isSearched)) return null;
  // The one on the bed stands above.
  const isBedAmong = data.studies.some(({ id }) => id === except);
  const total = data.total - (isBedAmong ? 1 : 0);
  return (
    <Section title={words.others}>
      {isSearched || total > pageOf ? (
        <TextLine label={words.findSheet} value={text} onChange={setText} />
      ) : null}
      {others.length === 0 ? <p>{words.noneFound}</p> : null}
      <ul className="sheets">
        {others.map(({ id, stock, cardCodes, touchedAt, isExample, stripOf }) => (
          <li key={id}>
            <Link href={pageAt(pages.study, { id })}>
              <strong>
                {studyText.stock(
                  stock.material,
                  stockThicknessMm(stock),
                  stock.thicknessReadingsMm.length > 0,
                )}
              </strong>
              <span className="small soft">
                {isExample ? `${inventedText.mark} · ` : ''}
                {stripOf === undefined ? '' : `${words.strip} · `}
                {stock.note === undefined ? '' : `${noteText.inList(stock.note)} · `}
                {words.cardsOf(cardCodes)} · {new Date(touchedAt).toLocaleDateString()}
              </span>
            </Link>
          </li>
        ))}
      </ul>
      {total <= others.length || shown >= mostShown ? null : (
        <div className="actions">
          <Action onPress={() => setShown(shown + pageOf)}>
            {words.showMore(others.length, total)}
          </Action>
        </div>
      )}
    </Section>
  );
};
