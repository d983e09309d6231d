import type { MeterReport } from '../../../core/metering/meterReport.ts';
import type { UnkeptMetering } from '../../../core/metering/metering.ts';
import { meterText as words } from '../../../words/texts.ts';
import '../../parts/drawn/drawn.css';

export interface MeterPictureProps {
  readonly metering: UnkeptMetering;
  readonly report: MeterReport;
}

const frame = { width: 640, height: 400, left: 60, right: 20, top: 20, bottom: 72 } as const;

/** Setting across, current up: the readings, the curve in its band, rated current as a line. */
export const MeterPicture = ({ metering, report }: MeterPictureProps) => {
  const { lines, curve } = report;
  const { readings, ratedCurrentMa } = metering;
  const mostPct = Math.max(...readings.map(({ powerPct }) => powerPct), 10);
  const mostMa = 1.08 * Math.max(...lines.map(({ highMa }) => highMa), ratedCurrentMa ?? 0);
  const x = (powerPct: number): number =>
    frame.left + (powerPct / mostPct) * (frame.width - frame.left - frame.right);
  const y = (currentMa: number): number =>
    frame.height - frame.bottom - (currentMa / mostMa) * (frame.height - frame.top - frame.bottom);
  const place = (powerPct: number, currentMa: number): string =>
    `${x(powerPct).toFixed(1)} ${y(currentMa).toFixed(1)}`;
  const middle = lines.map(({ powerPct, currentMa }) => place(powerPct, currentMa));
  const band = [
    ...lines.map(({ powerPct, highMa }) => place(powerPct, highMa)),
    ...lines.toReversed().map(({ powerPct, lowMa }) => place(powerPct, lowMa)),
  ];
  const { darkAtPct } = curve.firing;
  return (
    <svg
      className="drawn"
      viewBox={`0 0 ${String(frame.width)} ${String(frame.height)}`}
      role="img"
      aria-label={words.picture(lines[0]?.powerPct ?? 0, mostPct)}
    >
      {ticks(mostMa, 5).map((ma) => (
        <g key={ma}>
          <path className="meter-grid" d={`M${place(0, ma)}L${place(mostPct, ma)}`} />
          <text className="drawn-word" x={frame.left - 8} y={y(ma) + 5} textAnchor="end">
            {ma}
          </text>
        </g>
      ))}
      {ticks(mostPct, 6).map((pct) => (
        <text
          key={pct}
          className="drawn-word"
          x={x(pct)}
          y={frame.height - frame.bottom + 28}
          textAnchor="middle"
        >
          {pct}
        </text>
      ))}
      <text
        className="drawn-word"
        x={frame.width - frame.right}
        y={frame.height - 8}
        textAnchor="end"
      >
        {words.axisSetting}
      </text>
      <text className="drawn-word" x={frame.left + 6} y={frame.top + 8}>
        {words.axisCurrent}
      </text>
      {ratedCurrentMa === undefined ? null : (
        <g>
          <path
            className="drawn-limit"
            d={`M${place(0, ratedCurrentMa)}L${place(mostPct, ratedCurrentMa)}`}
          />
          <text className="drawn-word" x={frame.left + 6} y={y(ratedCurrentMa) + 26}>
            {words.ratedLine}
          </text>
        </g>
      )}
      <path className="meter-band" d={`M${band.join('L')}Z`} />
      {darkAtPct === null ? null : (
        <path className="drawn-line" d={`M${place(0, 0)}L${place(darkAtPct, 0)}`} />
      )}
      <path className="drawn-line" d={`M${middle.join('L')}`} />
      {readings.map(({ powerPct, currentMa }, i) => (
        <circle
          key={`${String(powerPct)}-${String(i)}`}
          className="drawn-mark"
          cx={x(powerPct)}
          cy={y(currentMa)}
          r={4.5}
        />
      ))}
    </svg>
  );
};

/** Round figures from 0 up to at most the top. */
const ticks = (most: number, about: number): readonly number[] => {
  const rough = most / about;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((times) => times * power).find((size) => size >= rough) ?? rough;
  return Array.from({ length: Math.floor(most / step) + 1 }, (_, i) => i * step);
};
