import type { BedTest } from '../../core/bed/bedTest.ts';
import type { Ports } from '../ports/ports.ts';

/** All readings of the four corners, the latest first. */
export const listBedTests = ({ store }: Pick<Ports, 'store'>): Promise<readonly BedTest[]> =>
  store.read((session) => session.bedTests());
