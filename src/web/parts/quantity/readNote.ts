import { done, refused, type Outcome } from '../../../core/problem.ts';
import { noteChars } from '../../../formats/saved/limits.ts';

/** A note as it can be kept, in several lines; it may still be empty. */
export const readNote = (text: string): Outcome<string> =>
  text.length > noteChars
    ? refused('note-too-long', { count: text.length, most: noteChars })
    : done(text);
