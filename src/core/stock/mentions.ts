import { editDistance } from '../../num/editDistance.ts';
import { denialBefore, denialsAfter, denialsBefore } from './denials.ts';
import { bareWords, type Term } from './wordList.ts';

/** Where a text names something, and the term that it hit. */
export interface Mention<K> {
  /** What it names. */
  readonly of: K;
  /** Words `fromWord` to `toWord` of the text, the end not included. */
  readonly fromWord: number;
  readonly toWord: number;
  /** The same in letters of the text run together; less than its words where a term is part of a word. */
  readonly from: number;
  readonly to: number;
  readonly term: string;
  /** Not by a slip of a letter. */
  readonly exact: boolean;
  /** “PVC-free”, “ohne PVC”: the text says that it is not this. */
  readonly isDenied: boolean;
}

interface Entry<K> {
  readonly of: K;
  readonly term: Term;
}

type Index<K> = ReadonlyMap<string, readonly Entry<K>[]>;

/** Terms with what they name, laid out so that a text is looked up word by word, whatever their number. */
export interface Dictionary<K> {
  readonly whole: Index<K>;
  readonly start: Index<K>;
  readonly end: Index<K>;
  readonly within: Index<K>;
  /** Long terms by their first letter: those that a slip may hide. */
  readonly long: Index<K>;
}

/** Shorter words have too many innocent neighbours to be taken for one another by a slip of a letter. */
const leastLettersForSlip = 8;

export const dictionaryOf = <K>(
  lists: Iterable<readonly [of: K, terms: readonly Term[]]>,
): Dictionary<K> => {
  const entries = [...lists].flatMap(([of, terms]) => terms.map((term) => ({ of, term })));
  const by = (
    wanted: (entry: Entry<K>) => boolean,
    key = ({ term }: Entry<K>): string => term.joined,
  ): Index<K> => {
    const index = new Map<string, Entry<K>[]>();
    for (const entry of entries.filter(wanted)) {
      const known = index.get(key(entry));
      if (known === undefined) index.set(key(entry), [entry]);
      else known.push(entry);
    }
    return index;
  };
  const isLong = ({ term }: Entry<K>): boolean =>
    term.fits === 'whole' && term.joined.length >= leastLettersForSlip;
  return {
    whole: by(({ term }) => term.fits === 'whole'),
    start: by(({ term }) => term.fits === 'start'),
    end: by(({ term }) => term.fits === 'end'),
    // A long whole term may be run together with others: "polycarbonatesheet".
    within: by((entry) => entry.term.fits === 'within' || isLong(entry)),
    long: by(isLong, ({ term }) => term.joined.slice(0, 1)),
  };
};

const longestWindow = 5;
/** Longer words are cut here: nobody names a material so. */
const longestWord = 60;

/**
 * Every place where a text names one of the terms, whole words only unless the term says otherwise. Words may be run
 * together or apart ("poly carbonate"), plural, or have one slip of a letter where the term is long. What the text says
 * that it is not is marked so. ~0.1 ms.
 */
export const mentionsIn = <K extends string>(
  text: string,
  dictionary: Dictionary<K>,
): readonly Mention<K>[] => {
  const words = bareWords(text).map((word) => word.slice(0, longestWord));
  const starts = words.reduce<number[]>(
    (sums, word) => [...sums, (sums.at(-1) ?? 0) + word.length],
    [0],
  );
  const found = new Map<string, Mention<K>>();
  for (let from = 0; from < words.length; from += 1) {
    for (let to = from + 1; to <= Math.min(words.length, from + longestWindow); to += 1) {
      const typed = words.slice(from, to);
      const at = starts[from] ?? NaN;
      for (const { entry, offset, length, exact } of hitsOf(typed, dictionary)) {
        const mention = {
          of: entry.of,
          fromWord: from,
          toWord: to,
          from: at + offset,
          to: at + offset + length,
          term: entry.term.term,
          exact,
          isDenied: isDenied(words, { from, to, offset, length }),
        };
        const key = `${mention.of}/${String(mention.from)}/${String(mention.to)}/${mention.term}`;
        if (found.get(key)?.exact !== true) found.set(key, mention);
      }
    }
  }
  return [...found.values()];
};

export const overlap = (a: Mention<unknown>, b: Mention<unknown>): boolean =>
  a.from < b.to && b.from < a.to;

interface Hit<K> {
  readonly entry: Entry<K>;
  readonly offset: number;
  readonly length: number;
  readonly exact: boolean;
}

const hitsOf = <K>(typed: readonly string[], dictionary: Dictionary<K>): readonly Hit<K>[] => {
  const joined = typed.join('');
  const all = { offset: 0, length: joined.length };
  const hits: Hit<K>[] = [];
  const take = (entries: readonly Entry<K>[] | undefined, where: Omit<Hit<K>, 'entry'>): void => {
    for (const entry of entries ?? []) hits.push({ entry, ...where });
  };
  take(dictionary.whole.get(joined), { ...all, exact: true });
  if (joined.length > 4 && joined.endsWith('s'))
    take(dictionary.whole.get(joined.slice(0, -1)), { ...all, exact: true });
  const [last, first] = [typed.at(-1) ?? '', typed[0] ?? ''];
  // A term that starts so must reach into the last word, and one that ends so begin in the first.
  for (let length = joined.length - last.length + 1; length <= joined.length; length += 1)
    take(dictionary.start.get(joined.slice(0, length)), { offset: 0, length, exact: true });
  for (let offset = 0; offset < first.length; offset += 1)
    take(dictionary.end.get(joined.slice(offset)), {
      offset,
      length: joined.length - offset,
      exact: true,
    });
  // What lies anywhere must reach from the first word into the last: “皮革(人造)”, “KT板”, where two scripts meet.
  for (let offset = 0; offset < first.length; offset += 1)
    for (let end = joined.length - last.length + 1; end <= joined.length; end += 1)
      for (const entry of dictionary.within.get(joined.slice(offset, Math.max(offset, end))) ?? [])
        hits.push({
          entry,
          offset,
          length: end - offset,
          exact: entry.term.fits === 'within',
        });
  if (joined.length >= leastLettersForSlip)
    for (const entry of dictionary.long.get(joined.slice(0, 1)) ?? [])
      if (isSlip(joined, entry.term.joined)) hits.push({ entry, ...all, exact: false });
  return hits;
};

// The first letter is seldom the slip, and keeps hardboard from being a slip of cardboard.
const isSlip = (typed: string, term: string): boolean =>
  typed !== term && Math.abs(typed.length - term.length) <= 1 && editDistance(typed, term) <= 1;

interface Span {
  readonly from: number;
  readonly to: number;
  readonly offset: number;
  readonly length: number;
}

const isDenied = (words: readonly string[], { from, to, offset, length }: Span): boolean => {
  const joined = words.slice(from, to).join('');
  const before = joined.slice(0, offset);
  const after = joined.slice(offset + length);
  const justBefore = (count: number): string =>
    words.slice(Math.max(0, from - count), from).join(' ');
  return (
    denialsAfter.some((denial) => after.startsWith(denial) || words[to] === denial) ||
    denialBefore.some((denial) => before.endsWith(denial)) ||
    [1, 2, 3].some((count) => denialsBefore.has(justBefore(count)))
  );
};
