import type { CutStudy, StudyCell } from '../../../core/cutmodel/cutStudy.ts';

/** One read cell as a sign in the picture. */
export interface PicturePoint {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  readonly grade: 'out' | 'hangs' | 'stays';
}

/** Per cent of power by which signs at one setting are put beside one another. */
const apart = 0.55;

/**
 * Every graded cell as a point. Cells of one setting would lie on one another: they are put side by side, so that two
 * that came out are seen to be two.
 */
export const picturePoints = (study: CutStudy): readonly PicturePoint[] => {
  const graded = study.cells.flatMap((cell) =>
    cell.grade === undefined || cell.spoilt !== undefined ? [] : [{ ...cell, grade: cell.grade }],
  );
  const places = graded.map(placeOf);
  return graded.map(({ powerPct, speedMmPerS, grade }, i): PicturePoint => {
    const beside = places.filter((place) => place === places[i]).length;
    const before = places.slice(0, i).filter((place) => place === places[i]).length;
    return { powerPct: powerPct + (before - (beside - 1) / 2) * apart, speedMmPerS, grade };
  });
};

const placeOf = ({ powerPct, speedMmPerS }: StudyCell): string =>
  `${String(powerPct)}/${String(speedMmPerS)}`;
