import type { Standing } from '../core/standing/standing.ts';
import { problemInWords } from './words.ts';

/** A standing whose reason is put into words, as files, the program and the server give it. */
export const standingInWords = (standing: Standing) => {
  const { code, params } = standing.why;
  const { message, remedy } = problemInWords(standing.why);
  return { ...standing, why: { code, params: { ...params }, message, remedy } };
};
