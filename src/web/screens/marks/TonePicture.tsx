import type { EvenShades } from '../../../core/marking/evenShades.ts';
import { toneAt } from '../../../core/marking/toneCurve.ts';
import { marksText as words } from '../../../words/texts.ts';
import './marks.css';

const wide = 300;
const high = 150;
const samples = 60;

/** The curve of lightness over ln dose with its band (k = 2), what was read (dots), and the even shades (rings). */
export const TonePicture = ({
  found: { curve, reads, shades },
}: {
  readonly found: EvenShades;
}) => {
  const { x } = curve.rising;
  const [from = NaN, to = NaN] = [x[0], x.at(-1)];
  const along = (lnDose: number): number => (wide * (lnDose - from)) / (to - from);
  const down = (lightness: number): number => high * (1 - lightness / 100);
  const tones = Array.from({ length: samples + 1 }, (_, i) => {
    const lnDose = from + ((to - from) * i) / samples;
    return { lnDose, ...toneAt(curve, Math.exp(lnDose)) };
  });
  const line = (off: number) =>
    tones.map(
      ({ lnDose, lightness, standardL }) =>
        `${along(lnDose).toFixed(1)},${down(Math.min(100, Math.max(0, lightness + off * standardL))).toFixed(1)}`,
    );
  return (
    <svg
      className="marks-tone"
      viewBox={`-34 -10 ${String(wide + 44)} ${String(high + 34)}`}
      role="img"
      aria-label={words.tonePicture(curve)}
    >
      {[0, 50, 100].map((lightness) => (
        <g key={lightness}>
          <path className="marks-rule" d={`M0 ${String(down(lightness))}H${String(wide)}`} />
          <text x={-6} y={down(lightness) + 4} textAnchor="end">
            {String(lightness)}
          </text>
        </g>
      ))}
      <text x={-6} y={high * 0.25 + 4} textAnchor="end">
        {words.toneAxes.light}
      </text>
      <text x={wide} y={high + 18} textAnchor="end">
        {words.toneAxes.dose}
      </text>
      <polygon className="marks-band" points={[...line(2), ...line(-2).toReversed()].join(' ')} />
      <polyline className="marks-curve" points={line(0).join(' ')} />
      {reads.map(({ dose, lightness }) => (
        <circle
          key={dose}
          className="marks-read"
          cx={along(Math.log(dose))}
          cy={down(lightness)}
          r={3}
        />
      ))}
      {shades.map(({ dose, lightness }, i) => (
        <circle
          key={i}
          className="marks-even"
          cx={along(Math.min(to, Math.max(from, Math.log(dose))))}
          cy={down(lightness)}
          r={6}
        />
      ))}
    </svg>
  );
};
