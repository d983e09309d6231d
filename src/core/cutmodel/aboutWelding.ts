import { median } from '../../num/median.ts';
import { problemOf, type Problem } from '../problem.ts';
import type { Fit } from './fit.ts';
import type { Recommendation } from './fitAnswer.ts';
import { referenceLengthsIn } from '../reading/referenceLengths.ts';
import { kindNamedIn } from './priors.ts';

/** What an answer says of shapes that welded back, and of those that perhaps did. */
export const aboutWelding = (
  fitted: Fit,
  recommended: Recommendation | null,
): readonly Problem[] => {
  const { welding } = fitted.compiled;
  if (welding === undefined) return perhapsWelded(fitted);
  if (recommended === null) return [];
  const { powerPct, speedMmPerS } = recommended;
  const slowest = slowestHolding(fitted, recommended);
  const { partLengthMm } = fitted.study.promise;
  const opens = welding.openAt(recommended, referenceLengthsIn(partLengthMm));
  return [
    problemOf('welds-back', {
      welded: welding.welded,
      through: welding.through,
      speedMmPerS,
      powerPct,
      of100: Math.round(100 * (1 - opens)),
      partLengthMm,
      ...(slowest === undefined ? {} : { slowestMmPerS: slowest }),
    }),
  ];
};

const step = 0.98;
/** Slower by more than this share nobody goes from an answer. */
const slowestLookedAt = 0.3;

/** The slowest speed down to which the promise is kept as surely as asked; undefined where it is as far down as anybody looks. */
const slowestHolding = (
  { decision, study }: Fit,
  { powerPct, speedMmPerS }: Recommendation,
): number | undefined => {
  let holds = speedMmPerS;
  for (let speed = speedMmPerS * step; ; speed *= step) {
    if (speed < slowestLookedAt * speedMmPerS) return undefined;
    if (100 * decision.sureAt(powerPct, speed) < study.promise.surePct) {
      return Math.round(Math.ceil(holds * 10 - 1e-9)) / 10;
    }
    holds = speed;
  }
};

/** Clearly slower than most that came out, as a share of their middle speed. */
const clearlySlower = 0.9;
const fewest = 2;

/**
 * Acrylic of which slower shapes fail as often as not where faster ones come out: nothing else that is usual does that, and
 * taken for shapes that were too fast they would make the answer slower still.
 */
const perhapsWelded = ({ study }: Fit): readonly Problem[] => {
  if (kindNamedIn(study.stock.material) !== 'acrylic') return [];
  const graded = study.cells.filter(
    ({ grade, spoilt, passes }) => grade !== undefined && spoilt === undefined && passes === 1,
  );
  const speeds = [...new Set(graded.map(({ powerPct }) => powerPct))].flatMap((powerPct) => {
    const here = graded.filter((cell) => cell.powerPct === powerPct);
    const middle = median(
      here.filter(({ grade }) => grade === 'out').map((cell) => cell.speedMmPerS),
    );
    if (middle === undefined) return [];
    const slower = here.filter(({ speedMmPerS }) => speedMmPerS <= clearlySlower * middle);
    const failed = slower.filter(({ grade }) => grade !== 'out').map((cell) => cell.speedMmPerS);
    return failed.length >= fewest && 2 * failed.length >= slower.length ? failed : [];
  });
  if (speeds.length === 0) return [];
  const distinct = [...new Set(speeds)].sort((a, b) => a - b);
  return [
    problemOf('perhaps-welded', {
      cells: speeds.length,
      speeds: distinct.join(', '),
    }),
  ];
};
