import { z } from 'zod';
import type { Setting } from '../core/machine/setting.ts';
import type { Mark } from '../core/marking/mark.ts';
import type { BesideCut } from '../core/marking/markLimits.ts';
import { done, type Outcome, type Problem } from '../core/problem.ts';
import type { Said, Say } from './answerFile.ts';
import { besideCutInFile, besideCutOf } from './besideCutFile.ts';
import { parseWith } from './border.ts';

/** Where to begin with marks beside a cut, asked in a file: `docs/formats/marks.md`. */
export const marksFileShape = z.strictObject(besideCutInFile);

/** The same as it is asked. */
export interface MarksFile extends BesideCut {
  readonly lineSpacingMm: number;
}

/** Reads what is asked of marks beside a cut, strict about keys, types and ranges. */
export const parseMarksFile = (json: unknown): Outcome<MarksFile> => {
  const parsed = parseWith(marksFileShape, json);
  if (!parsed.ok) return parsed;
  const { lineSpacingMm } = parsed.value;
  return done({ ...besideCutOf(parsed.value), lineSpacingMm });
};

/** Where to begin with one mark; null with its reason. */
interface BegunInFile {
  readonly begin: (Setting & { readonly lineSpacingMm?: number }) | null;
  readonly reason?: Said;
}

/** Where to begin, as it is printed. */
export interface MarksResultFile {
  readonly version: 1;
  readonly score: BegunInFile;
  readonly engrave: BegunInFile;
  /** That both are guesses. */
  readonly how: string;
  readonly remarks: readonly Said[];
  readonly cautions: readonly string[];
}

export const marksResultFile = (
  begun: {
    readonly score: Outcome<Mark>;
    readonly engrave: Outcome<Mark>;
    readonly ofMaterial: readonly Problem[];
  },
  {
    say,
    how,
    cautions,
  }: { readonly say: Say; readonly how: string; readonly cautions: readonly string[] },
): MarksResultFile => {
  const spoken = (problem: Problem): Said => {
    const { code, message } = say(problem);
    return { code, message };
  };
  const inFile = (mark: Outcome<Mark>): BegunInFile => {
    if (!mark.ok) return { begin: null, reason: spoken(mark.problem) };
    if (mark.value.kind === 'tape') throw new Error('Tape is proposed nowhere.');
    const { kind, setting, ...rest } = mark.value;
    return { begin: kind === 'score' ? setting : { ...setting, ...rest } };
  };
  return {
    version: 1,
    score: inFile(begun.score),
    engrave: inFile(begun.engrave),
    how,
    remarks: begun.ofMaterial.map(spoken),
    cautions,
  };
};
