import type { Ids, ReadSession } from '../ports/ports.ts';

/** A code that no card and no proven setting has yet. There are some hundred thousand: a few draws suffice. */
export const freeCode = async (session: ReadSession, ids: Ids): Promise<string> => {
  let code = ids.newCode();
  while (await session.codeTaken(code)) code = ids.newCode();
  return code;
};
