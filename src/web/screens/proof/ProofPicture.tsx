import { proofText as words } from '../../../words/texts.ts';
import type { PaintedProof } from '../../worker/paintPicture.ts';

export interface ProofPictureProps {
  readonly proof: PaintedProof;
}

/** The drawing as it lies on the bed: lines thin, slowed stretches by what they will do, kinds of places numbered. */
export const ProofPicture = ({ proof }: ProofPictureProps) => {
  const { widthMm, heightMm, lines, stretches, marks, isSimplified } = proof.picture;
  return (
    <figure className="proof-picture">
      <div
        className="proof-sheet"
        role="img"
        aria-label={words.pictureLabel(proof)}
        style={{
          aspectRatio: `${short(widthMm)} / ${short(heightMm)}`,
          maxWidth: `${short((72 * widthMm) / heightMm)}vh`,
        }}
      >
        <svg viewBox={`0 0 ${short(widthMm)} ${short(heightMm)}`} aria-hidden="true">
          {lines.map((data, i) => (
            <path key={i} className="proof-line" d={data} />
          ))}
          {stretches.map(({ look, data }) => (
            <path key={look} className={`proof-stretch proof-${look}`} d={data} />
          ))}
        </svg>
        {marks.map(({ number, look, acrossPct, downPct }, i) => (
          <span
            key={i}
            aria-hidden="true"
            className={`proof-mark proof-mark-${look}`}
            style={{ left: `${short(acrossPct)}%`, top: `${short(downPct)}%` }}
          >
            {number}
          </span>
        ))}
      </div>
      <figcaption>
        <ul className="proof-key">
          {[...stretches].reverse().map(({ look }) => (
            <li key={look}>
              <svg className="proof-sample" viewBox="0 0 40 10" aria-hidden="true">
                <path className={`proof-stretch proof-${look}`} d="M2 5H38" />
              </svg>
              {words.looks[look]}
            </li>
          ))}
        </ul>
        {isSimplified ? <p className="small soft">{words.simplified}</p> : null}
      </figcaption>
    </figure>
  );
};

const short = (value: number): string => String(Math.round(value * 100) / 100);
