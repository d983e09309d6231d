import { problemOf, type Carried, type Problem } from '../problem.ts';
import type { KerfRemarkCode } from '../problems/kerf.ts';
import type { CombDirection, KerfComb } from './kerfComb.ts';
import type { Kerf } from './kerf.ts';

/** Sheets of 3 to 6 mm lose 0.1 to 0.4 mm with the usual lens. Common practice, no source. */
const widestUsualMm = 0.5;

/** What is worth saying beside a kerf. */
export const kerfRemarks = (
  combs: readonly KerfComb[],
  { kerfMm }: Kerf,
  byDirection: readonly (Kerf & { readonly direction: CombDirection })[],
): readonly Problem[] => {
  const remark = <Code extends KerfRemarkCode>(
    is: boolean,
    code: Code,
    ...carried: Carried<Code>
  ): readonly Problem[] => (is ? [problemOf(code, ...carried)] : []);
  const [across, up] = byDirection;
  const apartMm = across === undefined || up === undefined ? 0 : across.kerfMm - up.kerfMm;
  const apartLimitMm = Math.hypot(across?.expandedMm ?? 0, up?.expandedMm ?? 0);
  return [
    ...remark(combs.length === 1, 'kerf-one-place'),
    ...remark(combs.length === 2, 'kerf-two-combs'),
    ...remark(
      combs.some(({ barMm }) => barMm === undefined),
      'kerf-without-bar',
    ),
    ...remark(Math.abs(apartMm) > apartLimitMm, 'kerf-directions-differ', {
      acrossMm: Number((across?.kerfMm ?? NaN).toFixed(3)),
      upMm: Number((up?.kerfMm ?? NaN).toFixed(3)),
    }),
    ...remark(kerfMm > widestUsualMm, 'kerf-wider-than-usual', {
      kerfMm: Number(kerfMm.toFixed(3)),
      usualMm: widestUsualMm,
    }),
  ];
};
