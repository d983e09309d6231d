import { rampCard, type RampCard, type RampCardRequest } from '../../core/card/rampCard.ts';
import type { Machine } from '../../core/machine/machine.ts';
import { andThen, done, type Outcome } from '../../core/problem.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';
import type { NamedMaterial } from '../../core/stock/namedMaterial.ts';
import { stripChangeover } from '../../core/study/stripChangeover.ts';

/** A strip to draw on: absent thickness is a usual one. */
export interface Strip extends NamedMaterial {
  readonly thicknessMm?: number;
}

/** A ramp asked for on a machine. */
export interface RampWish extends Omit<RampCardRequest, 'machine' | 'believed'> {
  readonly machine: Machine;
}

/** A focus ramp on a strip of a material that may be cut. Refuses: a refused material, and what `rampCard` refuses. */
export const designRamp = (strip: Strip, wish: RampWish): Outcome<RampCard> => {
  const accepted = acceptMaterial(strip);
  const believed = stripChangeover(strip, wish.machine);
  return andThen(accepted, (ofMaterial) =>
    andThen(rampCard({ ...wish, believed }), (card) => done({ ...card, ofMaterial })),
  );
};
