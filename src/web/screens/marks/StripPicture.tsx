import type { CardDrawing } from '../../../core/card/cardDrawing.ts';
import { linesFromAbove } from '../../parts/drawn/linesFromAbove.ts';
import './marks.css';

/** A marking strip from above: each step a little stronger than the last. */
export const StripPicture = ({
  drawing: { widthMm, heightMm, layers },
  label,
}: {
  readonly drawing: CardDrawing;
  readonly label: string;
}) => (
  <svg
    className="marks-strip"
    viewBox={`-1 -1 ${String(widthMm + 2)} ${String(heightMm + 2)}`}
    role="img"
    aria-label={label}
  >
    <rect className="marks-piece" width={widthMm} height={heightMm} />
    {layers.map(({ name, polylines }, i) => (
      <path
        key={name}
        className="marks-line"
        opacity={i === 0 ? 1 : 0.15 + (0.85 * i) / (layers.length - 1)}
        d={linesFromAbove(polylines, heightMm)}
      />
    ))}
  </svg>
);
