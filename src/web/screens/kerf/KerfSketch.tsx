import { kerfText as words } from '../../../words/texts.ts';

const strips = 10;
const box = { left: 60, top: 34, width: 260, height: 62 } as const;
const bar = { top: 128, height: 30 } as const;

/** Which number goes where: A across all strips of a comb pushed together, B across the bar. */
export const KerfSketch = () => {
  const right = box.left + box.width;
  return (
    <svg className="kerf-sketch" viewBox="0 0 400 176" role="img" aria-label={words.sketch}>
      {Array.from({ length: strips }, (_, i) => (
        <rect
          key={i}
          className="kerf-sketch-part"
          x={box.left + (i * box.width) / strips}
          y={box.top}
          width={box.width / strips}
          height={box.height}
        />
      ))}
      <Across letter="A" from={box.left} to={right} top={box.top} bottom={box.top + box.height} />
      <rect
        className="kerf-sketch-part"
        x={box.left}
        y={bar.top}
        width={box.width + 8}
        height={bar.height}
      />
      <Across
        letter="B"
        from={box.left}
        to={right + 8}
        top={bar.top}
        bottom={bar.top + bar.height}
      />
    </svg>
  );
};

interface AcrossProps {
  readonly letter: string;
  readonly from: number;
  readonly to: number;
  readonly top: number;
  readonly bottom: number;
}

/** The jaws of a caliper to either side, and the width between them. */
const Across = ({ letter, from, to, top, bottom }: AcrossProps) => {
  const y = top - 12;
  return (
    <>
      <path
        className="kerf-sketch-jaw"
        d={`M${String(from)} ${String(bottom + 6)}V${String(y - 8)}h-14zM${String(to)} ${String(bottom + 6)}V${String(y - 8)}h14z`}
      />
      <path
        className="kerf-sketch-width"
        d={`M${String(from)} ${String(y)}H${String(to)}M${String(from + 7)} ${String(y - 4)}l-7 4l7 4M${String(to - 7)} ${String(y - 4)}l7 4l-7 4`}
      />
      <text className="kerf-sketch-letter" x={12} y={(top + bottom) / 2 + 8}>
        {letter}
      </text>
    </>
  );
};
