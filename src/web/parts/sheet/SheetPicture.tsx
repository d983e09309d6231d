import { useMemo } from 'react';
import type { Card } from '../../../core/card/card.ts';
import { cardParts, type PartOf } from '../../../core/card/cardParts.ts';
import type { CellAsRead } from '../../../core/reading/readingEvent.ts';
import { CellShape } from './CellShape.tsx';
import { pathOf } from './paths.ts';
import './sheet.css';

export interface SheetPictureProps {
  readonly card: Card;
  /** How each cell stands. Absent: the card is only planned. */
  readonly cells?: readonly CellAsRead[];
  /** Whether the cells' words are drawn as the laser writes them; where the picture is small they are set as text instead. */
  readonly words: 'as-cut' | 'elsewhere';
  /** Says in words what the picture shows; absent where text beside it does. */
  readonly label?: string;
}

/** The card as the thing it is: a piece of plywood with shapes in it, to scale. */
export const SheetPicture = ({ card, cells, words, label }: SheetPictureProps) => {
  const { widthMm, heightMm } = card;
  const parts = useMemo(() => pathsOn(card), [card]);
  const readings = new Map(cells?.map(({ id, reading }) => [id, reading]));
  return (
    <svg
      className="sheet"
      viewBox={`0 0 ${widthMm} ${heightMm}`}
      {...(label === undefined ? { 'aria-hidden': true } : { role: 'img', 'aria-label': label })}
    >
      <rect className="sheet-wood" width={widthMm} height={heightMm} rx={0.6} />
      <path className="sheet-grain" d={grain(widthMm, heightMm)} />
      {parts.map(({ of, d }, i) => {
        if (of.what === 'outline' || (of.what === 'words' && words === 'elsewhere')) return null;
        if (of.what !== 'cell')
          return <path key={i} className={`sheet-mark sheet-${of.what}`} d={d} />;
        const cell = card.cells.find(({ id }) => id === of.cell);
        return cell === undefined ? null : (
          <CellShape
            key={i}
            d={d}
            xMm={cell.xMm}
            yMm={heightMm - cell.yMm}
            sizeMm={card.sizeMm}
            reading={cells === undefined ? undefined : readings.get(cell.id)}
          />
        );
      })}
      <rect className="sheet-edge" width={widthMm} height={heightMm} rx={0.6} />
    </svg>
  );
};

interface DrawnPath {
  readonly of: PartOf;
  readonly d: string;
}

/** Every line of the card as a path; only the readings change afterwards. */
const pathsOn = (card: Card): readonly DrawnPath[] => {
  const { marks, rungs, window, outline } = cardParts(card);
  return [marks, ...rungs, window, outline]
    .flat()
    .map(({ of, polylines }) => ({ of, d: pathOf(polylines, card.heightMm) }));
};

/** A few long, slightly bent lines: enough to say wood, too faint to be taken for a mark. */
const grain = (widthMm: number, heightMm: number): string =>
  Array.from({ length: Math.floor(heightMm / 5.3) }, (_, i) => {
    const y = 2.4 + i * 5.3 + 1.6 * Math.sin(i * 2.3);
    const bend = 1.7 * Math.sin(i * 1.7 + 1);
    return `M0 ${y.toFixed(2)}C${(widthMm * 0.3).toFixed(1)} ${(y + bend).toFixed(2)} ${(widthMm * 0.65).toFixed(1)} ${(y - bend).toFixed(2)} ${widthMm} ${(y + bend * 0.4).toFixed(2)}`;
  }).join('');
