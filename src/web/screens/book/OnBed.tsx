import { stockThicknessMm } from '../../../core/stock/stockThickness.ts';
import { bookText as words } from '../../../words/texts.ts';
import { Notice } from '../../parts/notice/Notice.tsx';
import { heldTogether } from '../../state/inWords.ts';
import type { BookEntry } from '../../state/queries.ts';

/** Where another sheet lies on the bed: whether the setting is for that one too, and if not, in what that differs. */
export const OnBed = ({ found: { onBed } }: { readonly found: BookEntry }) => {
  if (onBed === undefined) return null;
  const { stock, differs } = onBed;
  const isMeasured = stock.thicknessReadingsMm.length > 0;
  return (
    <Notice tone={differs.length === 0 ? 'say' : 'care'}>
      <p>
        {words.onBed(
          words.stock(
            stock.material,
            stock.nominalThicknessMm,
            isMeasured ? stockThicknessMm(stock) : undefined,
          ),
          differs.length === 0,
        )}
      </p>
      {differs.map(heldTogether).map(({ code, message, remedy }) => (
        <p key={code}>
          {message} <span className="soft">{remedy}</span>
        </p>
      ))}
    </Notice>
  );
};
