import type { FourCorners } from '../../../core/bed/fourCorners.ts';
import { cornersText as words } from '../../../words/texts.ts';
import { pathOf } from '../../parts/sheet/paths.ts';
import '../../parts/sheet/sheet.css';

/** The bed from above with its four clusters, to scale. */
export const BedPicture = ({ job: { cells, drawing } }: { readonly job: FourCorners }) => {
  const { widthMm, heightMm, layers } = drawing;
  return (
    <svg
      className="sheet corners-bed"
      viewBox={`0 0 ${String(widthMm)} ${String(heightMm)}`}
      role="img"
      aria-label={words.picture(cells.length)}
    >
      <rect className="sheet-wood" width={widthMm} height={heightMm} />
      {layers.map(({ kind, polylines }) => (
        <path key={kind} className="corners-line" d={pathOf(polylines, heightMm)} />
      ))}
      <rect className="sheet-edge" width={widthMm} height={heightMm} />
    </svg>
  );
};
