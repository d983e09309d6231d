import type { StretchLook } from '../../../core/proof/drawPicture.ts';
import type { DrawingProof } from '../../../core/proof/proveDrawing.ts';
import type { Point } from '../../../core/path/point.ts';
import { proofText as words } from '../../../words/en/screens/proof.ts';

export interface ProofPictureProps {
  readonly proof: DrawingProof;
}

/** The mildest first, so that what matters lies on top. */
const looks: readonly StretchLook[] = ['slow', 'warm', 'tips-burn', 'may-hang', 'not-through'];

/** The drawing as it lies on the bed: lines thin, slowed stretches by what they will do, kinds of places numbered. */
export const ProofPicture = ({ proof }: ProofPictureProps) => {
  const { box, lines, stretches, marks, isSimplified } = proof.picture;
  const size = Math.max(box.rightMm - box.leftMm, box.topMm - box.bottomMm, 1);
  const edge = size / 28;
  const [width, height] = [
    box.rightMm - box.leftMm + 2 * edge,
    box.topMm - box.bottomMm + 2 * edge,
  ];
  const across = (x: number): number => x - box.leftMm + edge;
  const down = (y: number): number => box.topMm - y + edge;
  const path = (points: readonly Point[]): string =>
    `M${points.map(([x, y]) => `${short(across(x))} ${short(down(y))}`).join('L')}`;
  const used = looks.filter((look) => stretches.some((stretch) => stretch.look === look));
  return (
    <figure className="proof-picture">
      <div
        className="proof-sheet"
        role="img"
        aria-label={words.pictureLabel(proof)}
        style={{
          aspectRatio: `${short(width)} / ${short(height)}`,
          maxWidth: `${short((72 * width) / height)}vh`,
        }}
      >
        <svg viewBox={`0 0 ${short(width)} ${short(height)}`} aria-hidden="true">
          <path className="proof-line" d={lines.map(path).join('')} />
          {used.map((look) => (
            <path
              key={look}
              className={`proof-stretch proof-${look}`}
              d={stretches
                .filter((stretch) => stretch.look === look)
                .map(({ points }) => path(points))
                .join('')}
            />
          ))}
        </svg>
        {marks.map(({ number, look, at: [x, y] }, i) => (
          <span
            key={i}
            aria-hidden="true"
            className={`proof-mark proof-mark-${look}`}
            style={{
              left: `${short((100 * across(x)) / width)}%`,
              top: `${short((100 * down(y)) / height)}%`,
            }}
          >
            {number}
          </span>
        ))}
      </div>
      <figcaption>
        <ul className="proof-key">
          {[...used].reverse().map((look) => (
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
