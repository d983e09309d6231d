import { jointsFrom, type Joint, type SlotRead } from './joints.ts';
import type { CombMeasure, KerfComb } from './kerfComb.ts';
import type { KerfEstimate } from './kerf.ts';
import { kerfFromCombs } from './kerfFromCombs.ts';
import { omit } from '../omit.ts';
import { done, type Outcome, type Problem } from '../problem.ts';

/** What was measured: combs, or slots with the tongue that was tried in them, or both. */
export interface KerfQuestion {
  readonly combs: readonly KerfComb[];
  readonly measure: CombMeasure;
  readonly slots?: readonly SlotRead[];
  readonly tongueMm?: number;
}

export interface KerfResult {
  /** Absent: no comb was measured. */
  readonly kerf?: Omit<KerfEstimate, 'remarks'>;
  /** By how much a part's outline is moved outward, and a hole's inward, to come out as drawn, mm: half the kerf. */
  readonly growMm?: number;
  readonly joints?: readonly Joint[];
  readonly remarks: readonly Problem[];
}

/** The kerf of a setting on a sheet, and the slots to draw. Refuses what `kerfFromCombs` and `jointsFrom` refuse. */
export const tellKerf = ({
  combs,
  measure,
  slots,
  tongueMm,
}: KerfQuestion): Outcome<KerfResult> => {
  const isAboutJoints = slots !== undefined && tongueMm !== undefined;
  const kerf = combs.length === 0 && isAboutJoints ? undefined : kerfFromCombs(combs, measure);
  if (kerf?.ok === false) return kerf;
  const told =
    kerf === undefined ? {} : { kerf: omit(kerf.value, 'remarks'), growMm: kerf.value.kerfMm / 2 };
  const remarks = kerf?.value.remarks ?? [];
  if (!isAboutJoints) return done({ ...told, remarks });
  const joints = jointsFrom(slots, {
    tongueMm,
    ...(kerf === undefined ? {} : { kerfMm: kerf.value.kerfMm }),
  });
  if (!joints.ok) return joints;
  return done({
    ...told,
    joints: joints.value.joints,
    remarks: [...remarks, ...joints.value.remarks],
  });
};
