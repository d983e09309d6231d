import { memo, useId } from 'react';
import type { CellAsRead } from '../../../core/reading/readingEvent.ts';

export interface CellShapeProps {
  /** Outline of the shape in the picture's coordinates. */
  readonly d: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly sizeMm: number;
  /** Absent: the card is only planned. */
  readonly reading: CellAsRead['reading'] | undefined;
}

const Shape = ({ d, xMm, yMm, sizeMm, reading }: CellShapeProps) => {
  if (reading === undefined) return <path className="cell-planned" d={d} />;
  if (reading.kind === 'unread') return <path className="cell-unread" d={d} />;
  if (reading.kind === 'spoilt') return <Spoilt d={d} xMm={xMm} yMm={yMm} sizeMm={sizeMm} />;
  switch (reading.grade) {
    case 'out':
      return (
        <g>
          <Hole d={d} sizeMm={sizeMm} />
          {reading.how === 'pushed' ? (
            <circle className="cell-pushed" cx={xMm} cy={yMm} r={sizeMm * 0.07} />
          ) : null}
        </g>
      );
    case 'hangs':
      return (
        <g>
          <Hole d={d} sizeMm={sizeMm} />
          <path
            className="cell-hanging"
            d={d}
            transform={`rotate(9 ${xMm} ${yMm}) translate(${xMm * 0.14} ${yMm * 0.14}) scale(.86)`}
          />
        </g>
      );
    case 'stays':
      return (
        <g>
          <path className="cell-staying" d={d} />
        </g>
      );
  }
};

/**
 * One shape as it looks on the bench. Planned or not read: a thin line. Out: a hole through which the bench shows. Hangs:
 * the piece tilted in its hole, held at one corner. Stays: a scorched line all round. Spoilt: a cross.
 */
export const CellShape = memo(
  Shape,
  (before, after) =>
    before.d === after.d &&
    JSON.stringify(before.reading) === JSON.stringify(after.reading) &&
    before.sizeMm === after.sizeMm,
);

/** A hole with the cut edge seen at its upper left, as thick as wood. */
const Hole = ({ d, sizeMm }: Pick<CellShapeProps, 'd' | 'sizeMm'>) => {
  const id = useId();
  const shift = sizeMm * 0.045;
  return (
    <g>
      <clipPath id={id}>
        <path d={d} />
      </clipPath>
      <path className="cell-wall" d={d} />
      <g clipPath={`url(#${id})`}>
        <path className="cell-hole" d={d} transform={`translate(${shift} ${shift * 1.4})`} />
      </g>
    </g>
  );
};

const Spoilt = ({ d, xMm, yMm, sizeMm }: Omit<CellShapeProps, 'reading'>) => {
  const arm = sizeMm * 0.2;
  return (
    <g>
      <path className="cell-spoilt" d={d} />
      <path
        className="cell-cross"
        d={`M${xMm - arm} ${yMm - arm}l${2 * arm} ${2 * arm}m0 ${-2 * arm}l${-2 * arm} ${2 * arm}`}
      />
    </g>
  );
};
