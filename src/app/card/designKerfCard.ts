import { kerfCard, type KerfCard, type KerfCardRequest } from '../../core/kerf/kerfCard.ts';
import { andThen, done, type Outcome } from '../../core/problem.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';
import type { NamedMaterial } from '../../core/stock/namedMaterial.ts';
import { stripChangeover } from '../../core/study/stripChangeover.ts';

/** A comb or slot card asked for of a sheet, on a machine. */
export interface KerfCardAsked extends Omit<KerfCardRequest, 'believed'> {
  readonly named: NamedMaterial;
}

/** A comb or slot card of a material that may be cut. Refuses: a refused material, and what `kerfCard` refuses. */
export const designKerfCard = ({ named, ...asked }: KerfCardAsked): Outcome<KerfCard> => {
  const { thicknessMm, machine } = asked;
  const believed = stripChangeover({ material: named.material, thicknessMm }, machine);
  return andThen(acceptMaterial(named), (ofMaterial) =>
    andThen(kerfCard({ ...asked, believed }), (card) => done({ ...card, ofMaterial })),
  );
};
