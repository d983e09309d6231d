import type { WhyMark, WhyPicture } from '../../../core/explain/whyPicture.ts';
import { powerWords, speedFigure, unitsShown, whyText as words } from '../../../words/texts.ts';

/** One cell's step, and the width of the field, in the picture's own units. */
const step = 26;
const field = 340;
const left = 46;
const below = 34;
const above = 22;
/** Cells that carry next to nothing have no ring. */
const leastRing = 0.25;

export interface WhyPictureViewProps {
  readonly picture: WhyPicture;
  readonly speedMmPerS: number;
}

/** The cells by speed; a ring about those that carry the answer, the larger the more. */
export const WhyPictureView = ({ picture, speedMmPerS }: WhyPictureViewProps) => {
  const height = picture.steps * step;
  const answerX = left + picture.answerX * field;
  return (
    <figure className="why-picture">
      <svg
        viewBox={`0 0 ${String(left + field + 8)} ${String(above + height + below)}`}
        role="img"
        aria-label={words.pictureLabel(speedMmPerS)}
      >
        {picture.ticks.map(({ x, speedMmPerS: speed }) => (
          <g key={speed} transform={`translate(${String(left + x * field)} ${String(above)})`}>
            <line className="why-rule" y2={height + 4} />
            <text className="why-tick" y={height + 18} textAnchor="middle">
              {speedFigure(speed)}
            </text>
          </g>
        ))}
        <text className="why-tick" x={0} y={above + height + 18}>
          {unitsShown().speed}
        </text>
        {picture.bands.map(({ powerPct, y, steps }) => (
          <text key={powerPct} className="why-tick" x={0} y={above + (y + steps / 2) * step + 4}>
            {powerWords(powerPct)}
          </text>
        ))}
        <line
          className="why-answer"
          x1={answerX}
          x2={answerX}
          y1={above - 4}
          y2={above + height + 4}
        />
        <text
          className="why-answer-word"
          x={answerX}
          y={above - 9}
          textAnchor={picture.answerX < 0.25 ? 'start' : picture.answerX > 0.75 ? 'end' : 'middle'}
        >
          {words.answerMark(speedMmPerS)}
        </text>
        {picture.marks.map((mark, i) => (
          <g
            key={i}
            transform={`translate(${String(left + mark.x * field)} ${String(above + mark.y * step)})`}
          >
            <Ring mark={mark} />
            <Sign grade={mark.grade} />
          </g>
        ))}
      </svg>
      <figcaption className="small">
        <p>{words.key}</p>
        <ul className="why-key">
          <li>
            <RingKey isHolding={false} /> {words.faster}
          </li>
          <li>
            <RingKey isHolding /> {words.slower}
          </li>
        </ul>
      </figcaption>
    </figure>
  );
};

const Ring = ({ mark: { size, without } }: { readonly mark: WhyMark }) =>
  size < leastRing ? null : (
    <circle
      className={without === 'higher' ? 'why-ring why-ring-holding' : 'why-ring'}
      r={(0.28 + 0.2 * size) * step}
      strokeWidth={1 + 2.2 * size}
    />
  );

const RingKey = ({ isHolding }: { readonly isHolding: boolean }) => (
  <svg className="why-key-ring" viewBox="-10 -10 20 20" aria-hidden="true">
    <circle
      className={isHolding ? 'why-ring why-ring-holding' : 'why-ring'}
      r={7}
      strokeWidth={2.4}
    />
  </svg>
);

const Sign = ({ grade }: Pick<WhyMark, 'grade'>) => {
  if (grade === 'out') return <circle className="why-out" r={4.6} />;
  if (grade === 'hangs') return <path className="why-hangs" d="M0 -5.6 5 4H-5z" />;
  return <path className="why-stays" d="M-4 -4 4 4M4 -4-4 4" />;
};
