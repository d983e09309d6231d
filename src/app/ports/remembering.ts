import type { ReadSession } from './ports.ts';

/**
 * A session that asks the store each question once: for lists whose rows each look through the same sheets. Only for
 * sessions that change nothing.
 */
export const remembering = (session: ReadSession): ReadSession => ({
  ...session,
  studyAsReadable: oncePerId(session.studyAsReadable),
  study: oncePerId(session.study),
});

const oncePerId = <T>(ask: (id: string) => Promise<T>): ((id: string) => Promise<T>) => {
  const asked = new Map<string, Promise<T>>();
  return (id) => {
    const known = asked.get(id) ?? ask(id);
    asked.set(id, known);
    return known;
  };
};
