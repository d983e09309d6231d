import { closing, opening } from './inPseudo.ts';

/** What of texts that follow one another stands outside the wraps, letters and all. */
export const outside = (texts: readonly string[]): string[] => {
  let depth = 0;
  return texts.flatMap((text) => {
    let left = '';
    for (const sign of text) {
      if (sign === opening) depth += 1;
      else if (sign === closing) depth -= 1;
      else if (depth === 0) left += sign;
    }
    return /\p{L}/u.test(left) ? [left.trim()] : [];
  });
};
