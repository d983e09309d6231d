import { gradePhotos } from '../app/sums/gradePhotos.ts';
import { photoLimits } from '../core/photo/photoLimits.ts';
import type { Photos } from '../core/photo/readPhoto.ts';
import { done, problemOf, type Outcome } from '../core/problem.ts';
import type { Picture } from '../core/photo/picture.ts';
import { parseCardFile } from '../formats/cardFile.ts';
import { decodePhoto } from '../host/decodePhoto.ts';
import { readBytes, sizeOfFile } from '../host/files.ts';
import { problemInWords } from '../words/words.ts';
import { printJson, printRefusal, type ExitCode } from './output.ts';
import { readNamed } from './readNamed.ts';

interface GradeOptions {
  readonly card?: string;
  readonly front?: string;
  readonly back?: string;
}

interface PhotoFiles {
  readonly front: string;
  readonly back?: string;
}

/**
 * `grade --card card.json --front IMG [--back IMG]`: each shape as a photograph shows it, and how sure that is. Ends with 0
 * too where the card is not found: `found` says so.
 */
export const runGrade = async (options: GradeOptions): Promise<ExitCode> => {
  const { front, back } = options;
  const card = await readNamed(options.card, parseCardFile);
  if (!card.ok) return printRefusal(card.problem);
  if (card.value === undefined || front === undefined)
    return printRefusal(
      problemOf('command-misused', { detail: 'it wants --card and --front, or --set' }),
    );
  const photos = await photosOf({ front, ...(back === undefined ? {} : { back }) });
  if (!photos.ok) return printRefusal(photos.problem);
  const { remarks, ...graded } = gradePhotos({ card: card.value, photos: photos.value });
  printJson({ ...graded, remarks: remarks.map((remark) => problemInWords(remark)) });
  return 0;
};

export const photosOf = async ({ front, back }: PhotoFiles): Promise<Outcome<Photos>> => {
  const first = await pictureIn(front);
  if (!first.ok || back === undefined) return first.ok ? done({ front: first.value }) : first;
  const second = await pictureIn(back);
  return second.ok ? done({ front: first.value, back: second.value }) : second;
};

const pictureIn = async (file: string): Promise<Outcome<Picture>> => {
  const size = await sizeOfFile(file);
  if (!size.ok) return size;
  if (size.value > photoLimits.bytes)
    return { ok: false, problem: problemOf('file-too-big-to-read', { file }) };
  const bytes = await readBytes(file);
  return bytes.ok ? decodePhoto(bytes.value, file) : bytes;
};
