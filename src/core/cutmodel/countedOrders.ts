import { clopperPearsonLower } from '../../num/binomialInterval.ts';
import { oneStepSurer } from './answerSpeed.ts';
import type { CutStudy } from './cutStudy.ts';

type Tally = CutStudy['tallies'][number];

/**
 * What an order says by itself, whatever any model makes of it: `failed` clearly more often than promised, `clean` where no
 * sound part failed, else `open`.
 */
export type OrderVerdict = 'failed' | 'clean' | 'open';

/** How sure it has to be that the true share of failures lies above the promised one. */
const clearly = 0.95;

/** By the exact binomial limit of Clopper & Pearson (1934); parts lost to a flaw count for neither side. */
export const orderVerdict = (
  { out, hangs, stays }: Pick<Tally, 'out' | 'hangs' | 'stays'>,
  { promise }: Pick<CutStudy, 'promise'>,
): OrderVerdict => {
  const x = hangs + stays;
  const n = out + x;
  if (n === 0) return 'open';
  if (x === 0) return 'clean';
  return clopperPearsonLower({ x, n }, clearly) > 1 - promise.outOf100 / 100 ? 'failed' : 'open';
};

/** An order of a batch from which cards were cut before the last one's is not of the sheet that lies on the bed. */
const isOfPresent = ({ cells }: CutStudy, { batch }: Tally): boolean => {
  const present = cells.at(-1)?.batch;
  return batch === undefined || batch === present || cells.every((cell) => cell.batch !== batch);
};

/** Another thickness says nothing plain about this one. */
const mostThicknessOff = 0.08;

/**
 * The fastest speed that orders leave standing at a power: one step slower than each that failed clearly, there or at more
 * power, in so many passes or more. With more power than it had the bound rises as power does. Infinity: none failed.
 */
export const ceilingOfOrders = (study: CutStudy, powerPct: number, passes = 1): number =>
  study.tallies
    .filter(
      (tally) =>
        tally.setting.passes >= passes &&
        isOfPresent(study, tally) &&
        Math.abs((tally.thicknessMm ?? study.stock.thicknessMm) / study.stock.thicknessMm - 1) <=
          mostThicknessOff &&
        orderVerdict(tally, study) === 'failed',
    )
    .reduce((least, { setting }) => {
      const slower = Math.min(oneStepSurer(setting.speedMmPerS), 0.95 * setting.speedMmPerS);
      return Math.min(least, slower * Math.max(1, powerPct / setting.powerPct));
    }, Infinity);

/** So many times as fast is clearly faster. */
const apart = 1.1;

/** Why cutting slower than an order was cut would not help, as far as its counts tell. */
export type SlowerIsNoHelp =
  | {
      readonly because: 'pockets';
      readonly order: Tally;
    }
  | { readonly because: 'no-fewer-slower'; readonly order: Tally; readonly faster: Tally };

/**
 * Of the last order: most of what was lost met a pocket, and clearly more did than the promise leaves room for; or it failed,
 * and at least as often as one that was cut clearly faster.
 */
export const slowerIsNoHelp = (study: CutStudy): SlowerIsNoHelp | null => {
  const order = study.tallies.at(-1);
  if (order === undefined) return null;
  const failed = order.hangs + order.stays;
  const all = order.out + failed + order.spoilt;
  const room = 1 - study.promise.outOf100 / 100;
  if (
    order.spoilt >= failed &&
    all > 0 &&
    clopperPearsonLower({ x: order.spoilt, n: all }, clearly) > room
  )
    return { because: 'pockets', order };
  if (orderVerdict(order, study) !== 'failed') return null;
  const share = ({ out, hangs, stays }: Tally): number => (hangs + stays) / (out + hangs + stays);
  const faster = study.tallies.find(
    (other) =>
      other.setting.speedMmPerS >= apart * order.setting.speedMmPerS &&
      other.setting.powerPct <= order.setting.powerPct &&
      orderVerdict(other, study) === 'failed' &&
      share(order) >= share(other),
  );
  return faster === undefined ? null : { because: 'no-fewer-slower', order, faster };
};
