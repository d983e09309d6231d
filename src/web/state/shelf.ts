/** The part of the browser's storage that is used here. */
export type Shelf = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

/** Copies of what the server has lie under such keys. They save a wait, and give way to what nobody else has. */
export const copyKey = (studyId: string): string => `${copyPrefix}${studyId}`;
const copyPrefix = 'throughcut.study.';

/** Keeps the text, at the cost of copies where there is no room. False where the browser will not have it even so. */
export const keepOn = (shelf: Shelf, key: string, text: string): boolean =>
  isSet(shelf, key, text) || (dropCopies(shelf) && isSet(shelf, key, text));

const isSet = (shelf: Shelf, key: string, text: string): boolean => {
  try {
    shelf.setItem(key, text);
    return true;
  } catch {
    return false;
  }
};

/** Every key that begins so, in their order. */
export const keysOn = (shelf: Shelf, prefix: string): readonly string[] =>
  Array.from({ length: shelf.length }, (_, i) => shelf.key(i))
    .filter((key): key is string => key?.startsWith(prefix) ?? false)
    .sort();

const dropCopies = (shelf: Shelf): boolean => {
  const copies = keysOn(shelf, copyPrefix);
  for (const key of copies) shelf.removeItem(key);
  return copies.length > 0;
};

/** A shelf that lives as long as the page. */
export const shelfOfPage = (): Shelf => {
  const kept = new Map<string, string>();
  return {
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, text) => void kept.set(key, text),
    removeItem: (key) => void kept.delete(key),
    key: (i) => [...kept.keys()][i] ?? null,
    get length() {
      return kept.size;
    },
  };
};
