import { editDistance } from '../num/editDistance.ts';

/**
 * The known word that someone most likely meant, or nothing when none is near: the same letters but for case, dashes
 * and underscores; or one that begins with the other (`speed` for `speedMmPerS`); or within two edits.
 */
export const closestWord = (typed: string, known: readonly string[]): string | undefined => {
  const plain = bare(typed);
  const alike = known.find((word) => bare(word) === plain);
  if (alike !== undefined) return alike;
  const begins = known.find((word) => startsAlike(bare(word), plain));
  if (begins !== undefined) return begins;
  const nearest = known
    .map((word) => ({ word, edits: editDistance(bare(word), plain) }))
    .sort((a, b) => a.edits - b.edits)[0];
  return nearest !== undefined && nearest.edits <= 2 && nearest.edits < plain.length / 2
    ? nearest.word
    : undefined;
};

const bare = (word: string): string => word.toLowerCase().replace(/[^a-z0-9]/g, '');

const startsAlike = (a: string, b: string): boolean =>
  Math.min(a.length, b.length) >= 4 && (a.startsWith(b) || b.startsWith(a));
