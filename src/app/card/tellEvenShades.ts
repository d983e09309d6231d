import { evenShades, type EvenShades, type ShadesRead } from '../../core/marking/evenShades.ts';
import { limitsBeside, type BesideCut } from '../../core/marking/markLimits.ts';
import type { MarkStrip } from '../../core/marking/markStrip.ts';
import { andThen, done, type Outcome, type Problem } from '../../core/problem.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';

/** A strip of shades as it was marked beside a cut, and what was seen on it. */
export interface EvenShadesAsked extends BesideCut {
  readonly strip: Pick<MarkStrip, 'lineSpacingMm' | 'settings'>;
  readonly read: ShadesRead;
}

export interface EvenShadesTold extends EvenShades {
  /** What is to be said of what the sheet is of. */
  readonly ofMaterial: readonly Problem[];
}

/** Settings for shades that lie evenly apart. Refuses: a refused material, and what `evenShades` refuses. */
export const tellEvenShades = ({
  strip,
  read,
  cut,
  stock,
  machine,
}: EvenShadesAsked): Outcome<EvenShadesTold> =>
  andThen(acceptMaterial(stock), (ofMaterial) =>
    andThen(
      evenShades({ ...strip, kind: 'shades' }, read, cut, limitsBeside({ cut, stock }, machine)),
      (found) => done({ ...found, ofMaterial }),
    ),
  );
