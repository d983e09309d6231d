import type { BedTest } from '../../core/bed/bedTest.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import type { Ports } from '../ports/ports.ts';

/** One reading of the four corners. Refuses: `bed-test-not-found`. */
export const readBedTest = async (
  { store }: Pick<Ports, 'store'>,
  id: string,
): Promise<Outcome<BedTest>> => {
  const test = await store.read((session) => session.bedTest(id));
  return test === undefined ? refused('bed-test-not-found', { id }) : done(test);
};
