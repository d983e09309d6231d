import { wallList, type WallMachine } from '../../core/standing/wallList.ts';
import type { AskingPorts } from '../ports/ports.ts';
import { searchBook } from './searchBook.ts';

/** More hang on no wall. */
const mostOnWall = 200;

/** The kept settings for the wall, with how they stand now and the kerfs and marks that were kept with them. */
export const readWallList = async (
  ports: Pick<AskingPorts, 'store' | 'model'>,
): Promise<readonly WallMachine[]> => {
  const { entries } = await searchBook(ports, '', { limit: mostOnWall });
  return ports.store.read(async (session) =>
    wallList(entries, {
      kerfTests: await session.machineTests('kerf-test'),
      markTests: await session.machineTests('mark-test'),
      machines: await session.machines(),
    }),
  );
};
