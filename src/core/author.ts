import { omit } from './omit.ts';

/** Who said something, by the name that the device goes by. Absent: from before there were names, or nobody gave one. */
export interface Author {
  readonly by?: string;
}

/** No longer than any line that is kept. */
const nameChars = 120;

/** The author of that name, as one line that can be kept; nobody where nothing is left of it. */
export const authorNamed = (name: string | undefined): Author => {
  const by = (name ?? '')
    .replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ')
    .trim()
    .slice(0, nameChars)
    // Half a sign is none.
    .replace(/[\ud800-\udbff]$/, '')
    .trim();
  return by === '' ? {} : { by };
};

/** The same thing as said by that author, whoever stood in it before. */
export const saidBy = <T extends Author>(thing: T, { by }: Author): T => {
  const bare = omit(thing, 'by');
  // What it is stays; `by` may be absent from every kind of it.
  return (by === undefined ? bare : { ...bare, by }) as T;
};
