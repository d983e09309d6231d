import type { CardDrawing } from '../../../core/card/cardDrawing.ts';
import { linesFromAbove } from '../../parts/drawn/linesFromAbove.ts';
import '../../parts/drawn/drawn.css';

/** A comb or slot card from above, as it will be cut. */
export const KerfCardPicture = ({
  drawing: { widthMm, heightMm, layers },
  label,
}: {
  readonly drawing: CardDrawing;
  readonly label: string;
}) => (
  <svg
    className="kerf-card"
    viewBox={`-1 -1 ${String(widthMm + 2)} ${String(heightMm + 2)}`}
    role="img"
    aria-label={label}
  >
    <rect className="kerf-piece" width={widthMm} height={heightMm} />
    {layers.map(({ name, kind, polylines }) => (
      <path
        key={name}
        className={`kerf-line kerf-${kind}`}
        d={linesFromAbove(polylines, heightMm)}
      />
    ))}
  </svg>
);
