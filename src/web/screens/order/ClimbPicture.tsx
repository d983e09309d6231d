import type { ClimbSheet } from '../../../core/running/climb.ts';
import { speedWords, orderRunText as words } from '../../../words/texts.ts';
import '../../parts/drawn/drawn.css';
import { climbPlot, type Next } from './climbPlot.ts';

export interface ClimbPictureProps {
  readonly climb: readonly ClimbSheet[];
  /** The sheet that comes next. */
  readonly next?: Next;
}

/** The climb: sheets from left to right, speed upwards, the band in which the fastest speed that keeps the promise lies. */
export const ClimbPicture = ({ climb, next }: ClimbPictureProps) => {
  const plot = climbPlot(climb, next);
  const { width, height } = plot.frame;
  const failed = climb.reduce((sum, { notOut }) => sum + notOut, 0);
  const [first, last] = [climb[0], climb.at(-1)];
  if (first === undefined || last === undefined) return null;
  return (
    <figure className="climb">
      <svg
        className="drawn"
        viewBox={`0 0 ${String(width)} ${String(height)}`}
        role="img"
        aria-label={words.climbPicture(
          climb.length,
          speedWords(first.speedMmPerS),
          speedWords(last.speedMmPerS),
          failed,
        )}
      >
        {plot.lines.map(({ y, label }) => (
          <g key={label}>
            <path
              className="climb-grid"
              d={`M${String(plot.frame.left)} ${y.toFixed(1)}H${String(width - plot.frame.right)}`}
            />
            <text className="drawn-word" x={plot.frame.left - 8} y={y + 5} textAnchor="end">
              {label}
            </text>
          </g>
        ))}
        {plot.bands.map((band) => (
          <path key={band} className="climb-band" d={band} />
        ))}
        {plot.even.map((line) => (
          <path key={line} className="climb-even" d={line} />
        ))}
        <path className="drawn-line climb-steps" d={plot.steps} />
        {plot.others.map(({ x, y, key }) => (
          <path
            key={key}
            className="climb-faster"
            d={`M${x.toFixed(1)} ${(y - 7).toFixed(1)}l7 12h-14z`}
          />
        ))}
        {plot.marks.map(({ x, y, notOut, number }) => (
          <g key={number}>
            <circle
              className={notOut === 0 ? 'drawn-mark' : 'drawn-mark climb-bad'}
              cx={x}
              cy={y}
              r={notOut === 0 ? 8 : 14}
            />
            {notOut === 0 ? null : (
              <text className="climb-count" x={x} y={y + 5.5} textAnchor="middle">
                {notOut}
              </text>
            )}
          </g>
        ))}
        {plot.next === undefined ? null : (
          <circle className="climb-next" cx={plot.next.x} cy={plot.next.y} r={9} />
        )}
        {plot.numbers.map(({ x, label }) => (
          <text key={label} className="drawn-word" x={x} y={height - 14} textAnchor="middle">
            {label}
          </text>
        ))}
      </svg>
      <ul className="climb-key small">
        <li>
          <KeyMark>
            <circle className="drawn-mark" cx="12" cy="12" r="7" />
          </KeyMark>
          {words.climbKey.sheet}
        </li>
        {failed === 0 ? null : (
          <li>
            <KeyMark>
              <circle className="drawn-mark climb-bad" cx="12" cy="12" r="10" />
            </KeyMark>
            {words.climbKey.bad}
          </li>
        )}
        {plot.bands.length === 0 ? null : (
          <li>
            <KeyMark>
              <path className="climb-band" d="M2 6H22V18H2z" />
            </KeyMark>
            {words.climbKey.band}
          </li>
        )}
        {plot.others.length === 0 ? null : (
          <li>
            <KeyMark>
              <path className="climb-faster" d="M12 4l8 14h-16z" />
            </KeyMark>
            {words.climbKey.faster}
          </li>
        )}
        {plot.next === undefined ? null : (
          <li>
            <KeyMark>
              <circle className="climb-next" cx="12" cy="12" r="8" />
            </KeyMark>
            {words.climbKey.next}
          </li>
        )}
      </ul>
    </figure>
  );
};

const KeyMark = ({ children }: { readonly children: React.ReactNode }) => (
  <svg className="climb-key-mark" viewBox="0 0 24 24" aria-hidden="true">
    {children}
  </svg>
);
