import { limitsBeside, type BesideCut, type MarkLimits } from '../../core/marking/markLimits.ts';
import { markStrip, type MarkStrip, type MarkStripWish } from '../../core/marking/markStrip.ts';
import { andThen, done, type Outcome } from '../../core/problem.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';

/** A marking strip asked for beside a cut, on a machine. */
export interface MarkStripAsked extends BesideCut {
  readonly wish: MarkStripWish;
}

/** A strip, and what all of it is held to. */
export interface MarkStripMade {
  readonly strip: MarkStrip;
  readonly limits: MarkLimits;
}

/** A marking strip of a material that may be cut. Refuses: a refused material, and what `markStrip` refuses. */
export const designMarkStrip = ({
  wish,
  cut,
  stock,
  machine,
}: MarkStripAsked): Outcome<MarkStripMade> => {
  const limits = limitsBeside({ cut, stock }, machine);
  return andThen(acceptMaterial(stock), (ofMaterial) =>
    andThen(markStrip(wish, cut, limits), (strip) =>
      done({ strip: { ...strip, ofMaterial }, limits }),
    ),
  );
};
