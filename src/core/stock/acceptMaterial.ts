import { done, type Outcome, type Problem } from '../problem.ts';
import { judgeMaterial } from './judgeMaterial.ts';
import type { NamedMaterial } from './namedMaterial.ts';

/** What is to be said of a material wherever it is cut, the open question first. */
export const materialRemarks = ({ material }: NamedMaterial): readonly Problem[] =>
  judgeMaterial(material).remarks;

/**
 * The one gate for what must not be cut: nothing is started on, worked out, designed, proved, watched, kept, imported or
 * drawn for a material that does not pass. What passes comes with what stays to be said of it, the open question first;
 * passing never means that it is safe. Refuses: `material-refused` with reason and source; a name that leaves open
 * whether the thing may be cut (`material-unknown`, `material-which-…`), unless a person has looked.
 */
export const acceptMaterial = ({
  material,
  materialKnown,
}: NamedMaterial): Outcome<readonly Problem[]> => {
  const judgement = judgeMaterial(material);
  const { decision, remarks } = judgement;
  if (decision === 'refuse') return { ok: false, problem: judgement.problem };
  if (decision === 'unknown' && materialKnown === undefined)
    return { ok: false, problem: judgement.problem };
  return done(remarks);
};
