import type { ReadSession } from './ports.ts';

/**
 * A session that asks the store each question once: for lists whose rows each look through the same sheets. Only for
 * sessions that change nothing.
 */
export const remembering = (session: ReadSession): ReadSession => {
  const readable = new Map<string, ReturnType<ReadSession['studyAsReadable']>>();
  const whole = new Map<string, ReturnType<ReadSession['study']>>();
  return {
    ...session,
    studyAsReadable: (id) => {
      const known = readable.get(id) ?? session.studyAsReadable(id);
      readable.set(id, known);
      return known;
    },
    study: (id) => {
      const known = whole.get(id) ?? session.study(id);
      whole.set(id, known);
      return known;
    },
  };
};
