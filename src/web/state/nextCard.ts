import type { Setting } from '../../core/machine/setting.ts';
import { tabShelf } from './browserShelf.ts';

/** The two conditions that a card and its twin are cut under, by name. */
export interface Compared {
  readonly by: string;
  readonly with: string;
  /** Whether the twin may lie on the same board. */
  readonly oneSheet: boolean;
}

/** What is said of the next card beside its settings. */
export interface NextCardWish {
  readonly cellsEach?: number;
  readonly batch?: string;
  readonly compared?: Compared;
}

/** The next card, on its way from the answer to the card's own screen. */
export interface NextCard extends NextCardWish {
  readonly rungs: readonly Setting[];
}

/** Kept for the session, so that a reload of that screen does not lose them. */
const keyOf = (studyId: string): string => `throughcut.next.${studyId}`;

export const keepNextCard = (
  studyId: string,
  rungs: readonly Setting[],
  wish: NextCardWish = {},
): void => {
  try {
    tabShelf.setItem(keyOf(studyId), JSON.stringify({ rungs, ...wish } satisfies NextCard));
  } catch {
    // Without storage the card's screen opens on its usual ladder.
  }
};

export const nextCard = (studyId: string): NextCard | undefined => {
  try {
    // What this page itself wrote, a moment ago.
    const value = JSON.parse(tabShelf.getItem(keyOf(studyId)) ?? 'null') as NextCard | null;
    return value !== null && value.rungs.length > 0 ? value : undefined;
  } catch {
    return undefined;
  }
};

const twinKeyOf = (studyId: string): string => `throughcut.twin.${studyId}`;

/** Remembers that a card was made for one side of a comparison, so that its twin gets the same settings and board. */
export const keepTwin = (studyId: string, code: string, { by }: Compared): void => {
  try {
    tabShelf.setItem(twinKeyOf(studyId), JSON.stringify({ code, by }));
  } catch {
    // Without storage the twin's settings come from the comparison as it then stands.
  }
};

/** Code of the card that was made for the other side, if one was. */
export const twinMade = (studyId: string, { by }: Compared): string | undefined => {
  try {
    // What this page itself wrote.
    const kept = JSON.parse(tabShelf.getItem(twinKeyOf(studyId)) ?? 'null') as {
      readonly code: string;
      readonly by: string;
    } | null;
    return kept === null || kept.by === by ? undefined : kept.code;
  } catch {
    return undefined;
  }
};
