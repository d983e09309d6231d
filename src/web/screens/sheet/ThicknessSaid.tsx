import type { Stock } from '../../../core/stock/stock.ts';
import { summariseThickness } from '../../../core/stock/thickness.ts';
import { sheetText as words } from '../../../words/texts.ts';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';

/** What the caliper says, against the label. */
export const ThicknessSaid = ({ stock }: { readonly stock: Stock }) => {
  const summary = summariseThickness(stock);
  if (summary === undefined) return null;
  const { meanMm, leastMm, mostMm, uncertaintyMm, remarks } = summary;
  return (
    <div className="stack">
      <p>{words.meanOf(meanMm, uncertaintyMm, leastMm, mostMm)}</p>
      {remarks.map((remark) => (
        <ProblemNotice key={remark.code} problem={remark} tone="care" />
      ))}
    </div>
  );
};
