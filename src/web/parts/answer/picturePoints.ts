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
  const bySetting = Map.groupBy(graded, placeOf);
  return [...bySetting.values()].flatMap((cells) =>
    cells.map(({ powerPct, speedMmPerS, grade }, i) => ({
      powerPct: powerPct + (i - (cells.length - 1) / 2) * apart,
      speedMmPerS,
      grade,
    })),
  );
};

const placeOf = ({ powerPct, speedMmPerS }: StudyCell): string =>
  `${String(powerPct)}/${String(speedMmPerS)}`;
