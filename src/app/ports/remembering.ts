import type { ReadSession } from './ports.ts';

/**
 * A session that asks the store each question once: for lists whose rows each look through the same sheets. Only for
 * sessions that change nothing.
 */
export const remembering = (session: ReadSession): ReadSession => {
  const studies = new Map<string, ReturnType<ReadSession['study']>>();
  return {
    ...session,
    studyAsReadable: (id) => {
      const known = studies.get(id) ?? session.studyAsReadable(id);
      studies.set(id, known);
      return known;
    },
  };
};
