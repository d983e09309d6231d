import { useState } from 'react';
import { tabShelf } from './browserShelf.ts';
import { keepOn } from './shelf.ts';

/**
 * What is being filled in: like a state, but it outlives a reload and a way back in this tab, until it is sent. `name`: one
 * for each form.
 */
export const useDraft = <T>(
  name: string,
  initial: T,
): readonly [value: T, set: (value: T) => void, sent: () => void] => {
  const key = `throughcut.draft.${name}`;
  const [value, setValue] = useState<T>(() => {
    const kept = readDraft(key);
    // What this page itself wrote, for this very form.
    return kept === undefined ? initial : (kept.value as T);
  });
  const set = (next: T): void => {
    setValue(next);
    keepOn(tabShelf, key, JSON.stringify({ value: next }));
  };
  const sent = (): void => tabShelf.removeItem(key);
  return [value, set, sent];
};

const readDraft = (key: string): { readonly value: unknown } | undefined => {
  try {
    const kept: unknown = JSON.parse(tabShelf.getItem(key) ?? 'null');
    return typeof kept === 'object' && kept !== null && 'value' in kept
      ? { value: kept.value }
      : undefined;
  } catch {
    return undefined;
  }
};
