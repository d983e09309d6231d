import { Link } from 'wouter';
import { stockThicknessMm } from '../../../core/stock/stockThickness.ts';
import { inventedText } from '../../../words/en/invented.ts';
import { bedText as words, studyText } from '../../../words/en/screens/study.ts';
import { Section } from '../../parts/page/Page.tsx';
import { useStudies } from '../../state/queries.ts';

/** The sheets that lay on the bed before. */
export const OtherSheets = ({ except }: { readonly except: string }) => {
  const { data } = useStudies();
  const others = data?.studies.filter(({ id }) => id !== except) ?? [];
  if (others.length === 0) return null;
  return (
    <Section title={words.others}>
      <ul className="sheets">
        {others.map(({ id, stock, cardCodes, touchedAt, isExample, stripOf }) => (
          <li key={id}>
            <Link href={`/study/${id}`}>
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
                {words.cardsOf(cardCodes)} · {new Date(touchedAt).toLocaleDateString()}
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </Section>
  );
};
