import type { NestSketch } from '../../../core/study/startedOrder.ts';
import { orderRunText as words } from '../../../words/texts.ts';
import { nextGrade, tapGrades, type Grade, type Tapped } from './tapped.ts';

export interface NestTapsProps {
  readonly nest: NestSketch;
  readonly taps: Tapped;
  /** Parts that are cut at the faster setting. */
  readonly faster: readonly number[];
  readonly onTap: (part: number, grade: Grade) => void;
}

/** The parts as they lie on the sheet, each to be tapped until it says how it came out. */
export const NestTaps = ({ nest, taps, faster, onTap }: NestTapsProps) => {
  const { widthMm, heightMm, parts } = nest;
  const edge = 0.02 * Math.max(widthMm, heightMm);
  const box = [-edge, -edge, widthMm + 2 * edge, heightMm + 2 * edge].map((mm) => mm.toFixed(1));
  return (
    <div className="stack">
      <p className="small soft">{words.tapParts}</p>
      <svg className="nest" viewBox={box.join(' ')} role="group" aria-label={words.count}>
        {parts.map((outline, part) => {
          const grade = taps[part] ?? 'out';
          const press = (): void => onTap(part, nextGrade(grade));
          return (
            <path
              key={outline.join(' ')}
              className={`nest-part nest-${grade} ${faster.includes(part) ? 'nest-faster' : ''}`}
              d={pathOf(outline)}
              role="button"
              tabIndex={0}
              aria-label={words.part(part + 1, words.grades[grade])}
              onClick={press}
              onKeyDown={(event) => {
                if (event.key !== 'Enter' && event.key !== ' ') return;
                event.preventDefault();
                press();
              }}
            />
          );
        })}
        {parts.map((outline, part) => {
          const grade = taps[part] ?? 'out';
          return grade === 'out' ? null : (
            <Sign
              key={outline.join(' ')}
              grade={grade}
              outline={outline}
              size={Math.max(widthMm, heightMm)}
            />
          );
        })}
      </svg>
      <ul className="nest-key">
        {tapGrades.map((grade) => (
          <li key={grade}>
            <span className={`nest-swatch nest-swatch-${grade}`} aria-hidden="true">
              {signs[grade]}
            </span>
            {words.grades[grade]}
          </li>
        ))}
      </ul>
    </div>
  );
};

/** Grades never rest on colour: each has its sign. */
const signs: Readonly<Record<Grade, string>> = { out: '', hangs: '⁄', stays: '×', spoilt: '?' };

const pathOf = (outline: readonly number[]): string => {
  const points: string[] = [];
  for (let i = 0; i + 1 < outline.length; i += 2)
    points.push(`${String(outline[i])} ${String(outline[i + 1])}`);
  return `M${points.join('L')}Z`;
};

interface SignProps {
  readonly grade: Grade;
  readonly outline: readonly number[];
  /** Of the whole sheet. */
  readonly size: number;
}

const Sign = ({ grade, outline, size }: SignProps) => {
  const xs = outline.filter((_, i) => i % 2 === 0);
  const ys = outline.filter((_, i) => i % 2 === 1);
  const [left, right, top, bottom] = [
    Math.min(...xs),
    Math.max(...xs),
    Math.min(...ys),
    Math.max(...ys),
  ];
  const height = Math.min(0.8 * Math.min(right - left, bottom - top), size / 12);
  return (
    <text
      className="nest-sign"
      x={(left + right) / 2}
      y={(top + bottom) / 2}
      fontSize={height}
      textAnchor="middle"
      dominantBaseline="central"
      aria-hidden="true"
    >
      {signs[grade]}
    </text>
  );
};
