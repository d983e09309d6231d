import { remembered } from '../remembered.ts';
import { judgeMaterial } from './judgeMaterial.ts';
import { besidesMaterial, findMaterial } from './materials.ts';

/** A material's name taken apart, so that it can be compared with many others. */
interface NameParts {
  /** The class of stock, or nothing where the name names none. */
  readonly material: string | undefined;
  /** What is thought of it: mirror-backed acrylic is judged apart from acrylic, and so is another material. */
  readonly judged: string;
  /** What the name says beside its class: `birch`, `cast`. */
  readonly besides: ReadonlySet<string>;
}

/** So many names are remembered: more materials than that has no workshop. */
const mostRemembered = 500;

const partsOf = remembered((name: string): NameParts => {
  const judgement = judgeMaterial(name);
  return {
    material: findMaterial(name)?.id,
    judged: 'judged' in judgement ? judgement.judged : judgement.decision,
    besides: besidesMaterial(name),
  };
}, mostRemembered);

/**
 * Whether another name is of the same material, as far as names tell: one class of stock, and nothing that contradicts.
 * "3 mm birch ply" and "plywood, birch" are one, and so is plain "plywood", which says less; birch and poplar plywood are
 * two, and so are cast and extruded acrylic. Names of no known class must say the same. Take the function that comes back
 * to many names: each name is judged once, ~0.5 ms, and remembered.
 */
export const sameMaterialAs = (name: string): ((other: string) => boolean) => {
  const one = partsOf(name);
  const known = new Map<string, boolean>();
  return (other) => {
    const before = known.get(other);
    if (before !== undefined) return before;
    const is = agree(one, partsOf(other));
    known.set(other, is);
    return is;
  };
};

const agree = (one: NameParts, other: NameParts): boolean => {
  if (one.material !== other.material || one.judged !== other.judged) return false;
  const within = isWithin(one.besides, other.besides);
  const around = isWithin(other.besides, one.besides);
  return one.material === undefined ? within && around && one.besides.size > 0 : within || around;
};

const isWithin = (fewer: ReadonlySet<string>, more: ReadonlySet<string>): boolean =>
  [...fewer].every((word) => more.has(word));
