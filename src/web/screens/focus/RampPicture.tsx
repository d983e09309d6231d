import { gapAtMm, type FocusRamp } from '../../../core/focus/focusRamp.ts';
import { lengthWords, focusText as words } from '../../../words/texts.ts';
import '../../parts/drawn/drawn.css';

const frame = { width: 640, height: 230, left: 24, right: 120, bottom: 26 } as const;
/** Heights are drawn so many times larger than lengths: a true picture would be all but flat. */
const steeper = 5;

/** The strip on its block from the side, and the head above its two ends. */
export const RampPicture = ({ ramp }: { readonly ramp: FocusRamp }) => {
  const { lengthMm, blockMm, nozzleGapMm } = ramp;
  const across = (frame.width - frame.left - frame.right) / lengthMm;
  const up = Math.min(steeper * across, (frame.height - frame.bottom - 40) / (nozzleGapMm + 1));
  const floor = frame.height - frame.bottom;
  const x = (mm: number): number => frame.left + mm * across;
  const y = (mm: number): number => floor - mm * up;
  const leftMm = gapAtMm(ramp, lengthMm);
  return (
    <svg
      className="drawn"
      viewBox={`0 0 ${String(frame.width)} ${String(frame.height)}`}
      role="img"
      aria-label={words.picture(blockMm, leftMm)}
    >
      <path className="ramp-bed" d={`M0 ${String(floor)}H${String(frame.width)}`} />
      <rect
        className="ramp-block"
        x={x(lengthMm) - 26}
        y={y(blockMm)}
        width={26}
        height={blockMm * up}
      />
      <path
        className="ramp-strip"
        d={`M${String(x(0))} ${String(y(0))}L${String(x(lengthMm))} ${String(y(blockMm))}`}
      />
      <Head x={x(0)} tip={y(nozzleGapMm)} />
      <Head x={x(lengthMm)} tip={y(nozzleGapMm)} faint />
      <path
        className="ramp-gap"
        d={`M${String(x(0) + 22)} ${String(y(0))}V${String(y(nozzleGapMm))}M${String(x(lengthMm) + 22)} ${String(y(blockMm))}V${String(y(nozzleGapMm))}`}
      />
      <text className="drawn-word" x={x(0) + 30} y={(y(0) + y(nozzleGapMm)) / 2}>
        {lengthWords(nozzleGapMm)}
      </text>
      <text className="drawn-word" x={x(lengthMm) + 30} y={(y(blockMm) + y(nozzleGapMm)) / 2 + 6}>
        {lengthWords(Number(leftMm.toFixed(2)))}
      </text>
      <text className="drawn-word" x={x(lengthMm) + 8} y={y(blockMm / 2) + 6}>
        {lengthWords(blockMm)}
      </text>
    </svg>
  );
};

const Head = ({ x, tip, faint = false }: { x: number; tip: number; faint?: boolean }) => (
  <path
    className={faint ? 'ramp-head ramp-head-faint' : 'ramp-head'}
    d={`M${String(x)} ${String(tip)}l-9 -18v-16h18v16z`}
  />
);
