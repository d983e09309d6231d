import type { ReadingEvent } from '../../../core/reading/readingEvent.ts';
import type { Change } from '../../state/change.ts';
import type { PutAside } from '../../state/outbox.ts';

/** What was put aside of one card for one reason; or one other change. */
export interface AsideGroup {
  readonly key: string;
  /** Absent: of a machine. */
  readonly studyId?: string;
  /** Absent: no reading of a card. */
  readonly cardCode?: string;
  readonly all: readonly PutAside[];
  readonly events: readonly ReadingEvent[];
  readonly message: string;
  readonly remedy: string;
}

/** Readings of one card that were refused for one reason belong together; other changes stand alone. */
export const asideGroups = (aside: readonly PutAside[]): readonly AsideGroup[] => {
  const groups = new Map<string, AsideGroup>();
  for (const one of aside) {
    const { change, why } = one;
    const events = change.kind === 'read' ? change.events : [];
    const cardCode = events[0]?.cardCode;
    const studyId = 'studyId' in change ? change.studyId : undefined;
    const key = cardCode === undefined ? one.key : [studyId, cardCode, why.message].join(' ');
    const before = groups.get(key);
    groups.set(key, {
      key,
      ...(studyId === undefined ? {} : { studyId }),
      ...(cardCode === undefined ? {} : { cardCode }),
      all: [...(before?.all ?? []), one],
      events: [...(before?.events ?? []), ...events],
      message: why.message,
      remedy: why.remedy,
    });
  }
  return [...groups.values()];
};

/** The same readings, said of another card. */
export const ofCard = (
  { events }: AsideGroup,
  target: { readonly studyId: string; readonly cardCode: string },
): Change => ({
  kind: 'read',
  studyId: target.studyId,
  events: events.map((event) => ({ ...event, cardCode: target.cardCode })),
});
