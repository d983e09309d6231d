import { findFocus } from '../../core/focus/findFocus.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import type { Ports } from '../ports/ports.ts';
import type { FocusTestRead } from './recordFocusTest.ts';

/** One focus test and where it found the focus. Refuses: `focus-test-not-found`. */
export const readFocusTest = async (
  { store }: Pick<Ports, 'store'>,
  id: string,
): Promise<Outcome<FocusTestRead>> => {
  const test = await store.read((session) => session.focusTest(id));
  return test === undefined
    ? refused('focus-test-not-found', { id })
    : done({ test, found: findFocus(test) });
};
