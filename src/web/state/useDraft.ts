import { useState } from 'react';
import { browserShelf, tabShelf } from './browserShelf.ts';
import { keepOn, type Shelf } from './shelf.ts';

export interface DraftOptions<T> {
  /** One for each form, and for each thing that it is of. */
  readonly name: string;
  readonly initial: T | (() => T);
  /**
   * What the form was opened on: a draft of anything else is out of date, and passed over. Absent: {@link initial}, which a
   * form that begins with a code or a seed of its own cannot be told by.
   */
  readonly of?: unknown;
  /**
   * For what takes longer than a tab lives: kept by the browser, whatever became of the tab. Given is how to read it, since
   * another version of this page may have written it; undefined where it cannot be.
   */
  readonly lasting?: (value: unknown) => T | undefined;
}

/** More than this is not worth the room that others need. */
const mostChars = 1_000_000;

/**
 * What is being filled in: like a state, but it outlives a reload and a way back, in this tab, until it is sent. Every form
 * keeps what is typed into it so.
 */
export const useDraft = <T>({
  name,
  initial,
  of,
  lasting,
}: DraftOptions<T>): readonly [value: T, set: (value: T) => void, sent: () => void] => {
  const key = `throughcut.draft.${name}`;
  const shelf = lasting === undefined ? tabShelf : browserShelf;
  const [draft, setDraft] = useState(() => {
    const begun = initial instanceof Function ? initial() : initial;
    const mark = lasting === undefined ? `${builtAs()} ${JSON.stringify(of ?? begun)}` : '';
    // What this very build wrote, for this very form, or what has just been read.
    const read = lasting ?? ((value: unknown) => value as T);
    const kept = keptUnder(shelf, key, mark);
    return { value: (kept === undefined ? undefined : read(kept.value)) ?? begun, mark };
  });
  const set = (value: T): void => {
    setDraft({ ...draft, value });
    const text = JSON.stringify({ mark: draft.mark, value });
    if (text.length <= mostChars) keepOn(shelf, key, text);
    else shelf.removeItem(key);
  };
  const sent = (): void => shelf.removeItem(key);
  return [draft.value, set, sent];
};

/** The build by the name of its first part, which no other build has. */
const builtAs = (): string => document.querySelector('script[src]')?.getAttribute('src') ?? '';

const keptUnder = (
  shelf: Shelf,
  key: string,
  mark: string,
): { readonly value: unknown } | undefined => {
  try {
    const kept: unknown = JSON.parse(shelf.getItem(key) ?? 'null');
    return typeof kept === 'object' &&
      kept !== null &&
      'mark' in kept &&
      kept.mark === mark &&
      'value' in kept
      ? { value: kept.value }
      : undefined;
  } catch {
    return undefined;
  }
};
