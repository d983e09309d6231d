import type { Setting } from '../../core/machine/setting.ts';

/**
 * The settings proposed for the next card, on their way from the answer to the card's own screen. Kept for the session,
 * so that a reload of that screen does not lose them.
 */
const keyOf = (studyId: string): string => `throughcut.next.${studyId}`;

export const keepNextRungs = (studyId: string, settings: readonly Setting[]): void => {
  try {
    sessionStorage.setItem(keyOf(studyId), JSON.stringify(settings));
  } catch {
    // Without storage the card's screen opens on its usual ladder.
  }
};

export const nextRungs = (studyId: string): readonly Setting[] | undefined => {
  try {
    const value: unknown = JSON.parse(sessionStorage.getItem(keyOf(studyId)) ?? 'null');
    // What this page itself wrote, a moment ago.
    return Array.isArray(value) && value.length > 0 ? (value as readonly Setting[]) : undefined;
  } catch {
    return undefined;
  }
};
