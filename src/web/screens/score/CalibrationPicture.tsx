import { scoreText as words } from '../../../words/texts.ts';
import '../../parts/drawn/drawn.css';

interface Bin {
  readonly sheets: number;
  readonly foretoldOutOf100: number;
  readonly outOf100: number;
  readonly bandOf100: readonly [number, number];
}

const frame = { size: 520, left: 70, right: 24, top: 24, bottom: 64 } as const;
const marks = [80, 85, 90, 95, 100] as const;

/** Foretold to the right, come upwards: on the diagonal what was foretold came. Bands are 95 % sure. */
export const CalibrationPicture = ({ bins }: { readonly bins: readonly Bin[] }) => {
  const least = Math.min(90, ...bins.flatMap((bin) => [bin.foretoldOutOf100, bin.outOf100]));
  const low = Math.max(0, Math.floor((least - 2) / 5) * 5);
  const wide = frame.size - frame.left - frame.right;
  const high = frame.size - frame.top - frame.bottom;
  const part = (outOf100: number): number => (Math.max(low, outOf100) - low) / (100 - low);
  const x = (outOf100: number): number => frame.left + part(outOf100) * wide;
  const y = (outOf100: number): number => frame.top + (1 - part(outOf100)) * high;
  const ticks = low < 80 ? [low, (low + 100) / 2, 100] : marks.filter((mark) => mark >= low);
  return (
    <svg
      className="drawn score-picture"
      viewBox={`0 0 ${String(frame.size)} ${String(frame.size)}`}
      role="img"
      aria-label={words.pictureSays(bins.length)}
    >
      {ticks.map((tick) => (
        <g key={tick}>
          <path
            className="score-grid"
            d={`M${x(low).toFixed(1)} ${y(tick).toFixed(1)}H${x(100).toFixed(1)}M${x(tick).toFixed(1)} ${y(low).toFixed(1)}V${y(100).toFixed(1)}`}
          />
          <text className="drawn-word" x={frame.left - 10} y={y(tick) + 6} textAnchor="end">
            {tick}
          </text>
          <text className="drawn-word" x={x(tick)} y={y(low) + 26} textAnchor="middle">
            {tick}
          </text>
        </g>
      ))}
      <path
        className="score-diagonal"
        d={`M${x(low).toFixed(1)} ${y(low).toFixed(1)}L${x(100).toFixed(1)} ${y(100).toFixed(1)}`}
      />
      {bins.map((bin) => (
        <g key={bin.foretoldOutOf100}>
          <title>{words.bin(bin.sheets)}</title>
          <path
            className="score-band"
            d={`M${x(bin.foretoldOutOf100).toFixed(1)} ${y(bin.bandOf100[0]).toFixed(1)}V${y(bin.bandOf100[1]).toFixed(1)}`}
          />
          <circle
            className="drawn-mark"
            cx={x(bin.foretoldOutOf100)}
            cy={y(bin.outOf100)}
            r={Math.min(14, 5 + 1.6 * Math.sqrt(bin.sheets))}
          />
        </g>
      ))}
      <text className="drawn-word" x={x(100)} y={frame.size - 12} textAnchor="end">
        {words.foretold}
      </text>
      <text className="drawn-word" x={x(low) + 8} y={frame.top + 16}>
        {words.came}
      </text>
    </svg>
  );
};
