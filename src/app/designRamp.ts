import { rampCard, type RampCard, type RampCardRequest } from '../core/card/rampCard.ts';
import { andThen, done, type Outcome } from '../core/problem.ts';
import { acceptMaterial, type NamedMaterial } from '../core/stock/acceptMaterial.ts';

/** A focus ramp on a strip of a material that may be cut. Refuses: a refused material, and what `rampCard` refuses. */
export const designRamp = (named: NamedMaterial, request: RampCardRequest): Outcome<RampCard> => {
  const accepted = acceptMaterial(named);
  return andThen(accepted, (ofMaterial) =>
    andThen(rampCard(request), (card) => done({ ...card, ofMaterial })),
  );
};
