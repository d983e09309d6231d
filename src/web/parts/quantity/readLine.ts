import { done, refused, type Outcome } from '../../../core/problem.ts';
import { labelChars } from '../../../formats/saved/limits.ts';

/** A line of words as it can be kept: a name, a batch, a material. It may still be empty. */
export const readLine = (text: string): Outcome<string> => {
  const line = text.trim();
  if (line.length > labelChars)
    return refused('line-too-long', { count: line.length, most: labelChars });
  return /\p{Cc}/u.test(line) ? refused('line-with-controls', {}) : done(text);
};
