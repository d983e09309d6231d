import type { Card } from '../../core/card/card.ts';
import type { CellSeen } from '../../core/photo/gradeCell.ts';
import { readPhoto, type Photos } from '../../core/photo/readPhoto.ts';
import type { Problem } from '../../core/problem.ts';

export interface PhotosToGrade {
  readonly card: Card;
  readonly photos: Photos;
}

/** What `grade` gives, whoever asks. */
export interface PhotosGraded {
  readonly version: 1;
  readonly found: boolean;
  /** How sure each is to three places. */
  readonly cells: readonly CellSeen[];
  readonly remarks: readonly Problem[];
}

/** Each shape of a card as its photographs show it. About a second a side of three megapixels. */
export const gradePhotos = ({ card, photos }: PhotosToGrade): PhotosGraded => {
  const { found, cells, remarks } = readPhoto(card, photos);
  return {
    version: 1,
    found,
    cells: cells.map((seen) => ({ ...seen, sure: Number(seen.sure.toFixed(3)) })),
    remarks,
  };
};
