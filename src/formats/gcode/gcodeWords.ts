/** One word of a line: a letter and its number, `G1`, `X-2.5`. */
export interface GcodeWord {
  readonly letter: string;
  readonly value: number;
}

export interface GcodeLine {
  readonly words: readonly GcodeWord[];
  readonly comments: readonly string[];
  /** Begun with `/`: not carried out while block delete is on. */
  readonly deletable: boolean;
  /** A lone percent sign. */
  readonly percent: boolean;
}

/** Why a line cannot be read. */
export interface LineError {
  readonly why: string;
}

const wordPattern = /^([a-z])([+-]?(?:\d+\.?\d*|\.\d+))/i;

/** Nothing on a bed is further away, in mm or inches, and no controller counts higher. */
const greatest = 1e7;

/**
 * Takes one line apart (RS-274/NGC): comments in brackets, or behind a semicolon as many controllers have it; white space
 * means nothing outside comments, nor does case.
 */
export const takeApart = (text: string): GcodeLine | LineError => {
  const { code, comments, error } = splitComments(text);
  if (error !== undefined) return { why: error };
  const bare = code.replaceAll(/\s/g, '');
  if (bare === '%') return { words: [], comments, deletable: false, percent: true };
  const deletable = bare.startsWith('/');
  let rest = deletable ? bare.slice(1) : bare;
  const words: GcodeWord[] = [];
  while (rest !== '') {
    const found = wordPattern.exec(rest);
    if (found === null) return { why: `cannot read ${JSON.stringify(rest.slice(0, 20))}` };
    const [whole, letter = '', number = ''] = found;
    const value = Number(number);
    if (!(Math.abs(value) <= greatest))
      return { why: `${letter.toUpperCase()} is beyond all bounds` };
    words.push({ letter: letter.toUpperCase(), value });
    rest = rest.slice(whole.length);
  }
  return { words, comments, deletable, percent: false };
};

interface Split {
  readonly code: string;
  readonly comments: readonly string[];
  readonly error?: string;
}

const splitComments = (text: string): Split => {
  const comments: string[] = [];
  let code = '';
  let comment: string | undefined;
  for (let i = 0; i < text.length; i += 1) {
    const sign = text.charAt(i);
    if (comment === undefined) {
      if (sign === ';') {
        comments.push(text.slice(i + 1).trim());
        break;
      }
      if (sign === ')') return { code, comments, error: 'comment closed that was not open' };
      if (sign === '(') comment = '';
      else code += sign;
    } else if (sign === '(') return { code, comments, error: 'nested comment' };
    else if (sign === ')') {
      comments.push(comment.trim());
      comment = undefined;
    } else comment += sign;
  }
  return comment === undefined
    ? { code, comments }
    : { code, comments, error: 'comment not closed' };
};
