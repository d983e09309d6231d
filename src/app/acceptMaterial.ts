import { done, type Outcome } from '../core/problem.ts';
import { judgeMaterial } from '../core/stock/judgeMaterial.ts';

/**
 * Refused materials are not started on, not designed for, not exported and not kept. Anything else passes, which never
 * means that it is safe. Refuses: `material-refused`, with reason and source.
 */
export const acceptMaterial = (material: string): Outcome<undefined> => {
  const judgement = judgeMaterial(material);
  return judgement.decision === 'refuse'
    ? { ok: false, problem: judgement.problem }
    : done(undefined);
};
