import { stockThicknessMm } from '../../../core/stock/stockThickness.ts';
import type { Stock } from '../../../core/stock/stock.ts';
import { sheetText as words } from '../../../words/en/screens/sheet.ts';

/** What the caliper says, against the label. */
export const ThicknessSaid = ({ stock }: { readonly stock: Stock }) => {
  const { thicknessReadingsMm: readings } = stock;
  if (readings.length === 0) return null;
  return (
    <p role="status">
      {words.meanOf(stockThicknessMm(stock), Math.min(...readings), Math.max(...readings))}
    </p>
  );
};
