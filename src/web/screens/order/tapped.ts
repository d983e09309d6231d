import { grades } from '../../../core/reading/grade.ts';

/** How a part of a nest came out. */
export const tapGrades = [...grades, 'spoilt'] as const;

export type Grade = (typeof tapGrades)[number];

/** Parts that were tapped, by their place; the others came out. */
export type Tapped = Readonly<Record<number, Grade>>;

export const noneTapped: Tapped = {};

/** What the next tap on a part makes of it. */
export const nextGrade = (grade: Grade): Grade =>
  tapGrades[(tapGrades.indexOf(grade) + 1) % tapGrades.length] ?? 'out';

/** Counts the tapped parts of those that are meant. */
export const tapped = (
  taps: Tapped,
  parts: number,
  isMeant: (part: number) => boolean,
): Readonly<Record<Exclude<Grade, 'out'>, number>> => {
  const counts = { hangs: 0, stays: 0, spoilt: 0 };
  for (let part = 0; part < parts; part += 1) {
    const grade = taps[part] ?? 'out';
    if (grade !== 'out' && isMeant(part)) counts[grade] += 1;
  }
  return counts;
};
