import type { ReadingEvent } from './readingEvent.ts';
import { withoutRepeats } from './standing.ts';

/**
 * The events of two copies of one study in one order. What either copy says of the order of its own events stands; between
 * an event that only one copy has and one that only the other has, the earlier by its time comes first (by its id where
 * the times are equal). So a grade from this morning does not outrank this afternoon's because it was brought in later.
 * Where the copies contradict each other about the order of events that both have, `here` stands; but for that, it does
 * not matter which copy is brought into which. Events of one id are one, as it stands here. O(n).
 */
export const mergeEvents = (
  here: readonly ReadingEvent[],
  coming: readonly ReadingEvent[],
): readonly ReadingEvent[] => {
  const ours = withoutRepeats(here);
  const theirs = withoutRepeats(coming);
  const haveOurs = new Set(ours.map(({ id }) => id));
  const haveTheirs = new Set(theirs.map(({ id }) => id));
  const merged: ReadingEvent[] = [];
  const taken = new Set<string>();
  let i = 0;
  let j = 0;
  // Invariant: all of ours before i and of theirs before j are taken.
  for (;;) {
    const one = ours[i];
    const other = theirs[j];
    if (one === undefined && other === undefined) return merged;
    if (one !== undefined && taken.has(one.id)) i += 1;
    else if (other !== undefined && taken.has(other.id)) j += 1;
    else {
      const next = nextOf(one, other, haveOurs, haveTheirs);
      if (next !== undefined) {
        merged.push(next);
        taken.add(next.id);
      }
    }
  }
};

const nextOf = (
  one: ReadingEvent | undefined,
  other: ReadingEvent | undefined,
  haveOurs: ReadonlySet<string>,
  haveTheirs: ReadonlySet<string>,
): ReadingEvent | undefined => {
  if (one === undefined || other === undefined) return one ?? other;
  if (haveOurs.has(other.id)) return one;
  // What both have waits until the other copy has said everything that it puts before.
  if (haveTheirs.has(one.id)) return other;
  return isEarlier(other, one) ? other : one;
};

const isEarlier = (a: ReadingEvent, b: ReadingEvent): boolean => {
  const apartMs = Date.parse(a.at) - Date.parse(b.at);
  return apartMs < 0 || (apartMs === 0 && a.id < b.id);
};
