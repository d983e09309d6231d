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

const wordPattern = /[a-z][+-]?(?:\d+\.?\d*|\.\d+)/iy;

/** Nothing on a bed is further away, in mm or inches, and no controller counts higher. */
const greatest = 1e7;

/**
 * Takes one line apart (RS-274/NGC): comments in brackets, or behind a semicolon as many controllers have it; white space
 * means nothing outside comments, nor does case.
 */
export const takeApart = (text: string): GcodeLine | LineError => {
  const { code, comments, error } = splitComments(text);
  if (error !== undefined) return { why: error };
  const bare = /\s/.test(code) ? code.replaceAll(/\s/g, '') : code;
  if (bare === '%') return { words: [], comments, deletable: false, percent: true };
  const deletable = bare.startsWith('/');
  const words: GcodeWord[] = [];
  for (let at = deletable ? 1 : 0; at < bare.length; at = wordPattern.lastIndex) {
    wordPattern.lastIndex = at;
    if (!wordPattern.test(bare))
      return { why: `cannot read ${JSON.stringify(bare.slice(at, at + 20))}` };
    const letter = bare.charAt(at).toUpperCase();
    const value = Number(bare.slice(at + 1, wordPattern.lastIndex));
    if (!(Math.abs(value) <= greatest)) return { why: `${letter} is beyond all bounds` };
    words.push({ letter, value });
  }
  return { words, comments, deletable, percent: false };
};

interface Split {
  readonly code: string;
  readonly comments: readonly string[];
  readonly error?: string;
}

const splitComments = (text: string): Split => {
  if (!/[();]/.test(text)) return { code: text, comments: [] };
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
