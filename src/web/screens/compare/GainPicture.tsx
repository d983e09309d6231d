import type { GainBetween } from '../../../core/compare/gainBetween.ts';
import { compareText as words } from '../../../words/texts.ts';

const widthPx = 420;
const heightPx = 96;
const barY = 34;
const steps = [5, 10, 20, 40];

const pct = (value: number): string => `${String(Math.round(value))}\u202f%`.replace('-', '\u2212');

/** The range about its middle, on a scale of speed with “same” in its centre. */
export const GainPicture = ({ gainPct }: Pick<GainBetween, 'gainPct'>) => {
  const { low, middle, high } = gainPct;
  const reach = 1.1 * Math.max(6, Math.abs(low), Math.abs(high));
  const x = (value: number): number => (widthPx / 2) * (1 + value / reach);
  const step = steps.find((each) => reach / each < 4) ?? 80;
  const marks = Array.from({ length: 7 }, (_, i) => (i - 3) * step).filter(
    (mark) => Math.abs(mark) <= 0.95 * reach,
  );
  return (
    <svg
      className="compare-picture"
      viewBox={`0 0 ${String(widthPx)} ${String(heightPx)}`}
      role="img"
      aria-label={words.picture(pct(low), pct(middle), pct(high))}
    >
      <line className="compare-axis" x1={0} x2={widthPx} y1={60} y2={60} />
      <line className="compare-same" x1={x(0)} x2={x(0)} y1={6} y2={66} />
      {marks.map((mark) => (
        <g key={mark}>
          <line className="compare-axis" x1={x(mark)} x2={x(mark)} y1={60} y2={66} />
          <text className="compare-mark" x={x(mark)} y={86}>
            {mark === 0 ? words.same : pct(mark)}
          </text>
        </g>
      ))}
      <text className="compare-way" x={4} y={16}>
        {words.slower}
      </text>
      <text className="compare-way compare-way-end" x={widthPx - 4} y={16}>
        {words.faster}
      </text>
      <rect
        className="compare-range"
        x={x(low)}
        y={barY - 7}
        width={Math.max(2, x(high) - x(low))}
        height={14}
        rx={7}
      />
      <circle className="compare-middle" cx={x(middle)} cy={barY} r={9} />
    </svg>
  );
};
