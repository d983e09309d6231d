import { dirname, join } from 'node:path';
import { photoScore, type JudgedCard } from '../core/photo/photoScore.ts';
import { readPhoto } from '../core/photo/readPhoto.ts';
import { done, type Outcome } from '../core/problem.ts';
import { parseCardFile } from '../formats/cardFile.ts';
import { isPhotoSetFile, parsePhotoSetFile } from '../formats/photoSetFile.ts';
import { jsonFilesIn, readTextFile } from '../host/files.ts';
import { photosOf } from './grade.ts';
import { readJsonFile } from './readJsonFile.ts';
import { printJson, printRefusal, tell, type ExitCode } from './output.ts';

/** `grade --set FOLDER`: photographed cards that a person judged, read and held against that. */
export const runGradeSet = async (folder: string): Promise<ExitCode> => {
  const files = await jsonFilesIn(folder);
  if (!files.ok) return printRefusal(files.problem);
  const judged: JudgedCard[] = [];
  for (const file of files.value) {
    const card = await judgedIn(file);
    if (!card.ok) {
      tell(file);
      return printRefusal(card.problem);
    }
    if (card.value !== undefined) judged.push(card.value);
  }
  printJson({ version: 1, ...photoScore(judged) });
  return 0;
};

/** Undefined where the file is something else, as the card itself. */
const judgedIn = async (file: string): Promise<Outcome<JudgedCard | undefined>> => {
  const json = await readJsonFile(file, done<unknown>);
  if (!json.ok) return json;
  if (!isPhotoSetFile(json.value)) return done(undefined);
  const set = parsePhotoSetFile(json.value);
  if (!set.ok) return set;
  const { front, back, grades } = set.value;
  const beside = (name: string): string => join(dirname(file), name);
  const cardText = await readTextFile(beside(set.value.card));
  if (!cardText.ok) return cardText;
  const card = parseCardFile(cardText.value);
  if (!card.ok) return card;
  const photos = await photosOf({
    front: beside(front),
    ...(back === undefined ? {} : { back: beside(back) }),
  });
  if (!photos.ok) return photos;
  const { found, cells } = readPhoto(card.value, photos.value);
  return done({ name: front, found, cells, truth: new Map(Object.entries(grades)) });
};
