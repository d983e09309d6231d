import { findFocus } from '../../core/focus/findFocus.ts';
import type { FocusFound, FocusTest } from '../../core/focus/focusTest.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { ofItsMachine } from '../shared/machineOfTest.ts';
import type { Ports } from '../ports/ports.ts';
import { sameValue } from '../../core/sameValue.ts';

/** A focus test whose id and time may be left to the tool. */
export type FocusTestToRecord = Omit<FocusTest, 'id' | 'at' | 'version' | 'isExample'> & {
  readonly id?: string;
  readonly at?: string;
};

/** A stored focus test, with where it found the focus. */
export interface FocusTestRead {
  readonly test: FocusTest;
  readonly found: Outcome<FocusFound>;
}

/**
 * Stores a focus test with its date. The same one sent twice is stored once. Refuses readings that find no focus, and
 * `focus-test-id-taken`, `machine-not-found`.
 */
export const recordFocusTest = (
  ports: Ports,
  asked: FocusTestToRecord,
): Promise<Outcome<FocusTestRead>> =>
  ports.store.change(async (session) => {
    const own = await ofItsMachine(session, ports, asked);
    if (!own.ok) return own;
    const test: FocusTest = {
      ...own.value,
      version: 1,
      id: asked.id ?? ports.ids.newId(),
      at: asked.at ?? ports.clock.now(),
    };
    const found = findFocus(test);
    if (!found.ok) return found;
    const known = await session.focusTest(test.id);
    if (known === undefined) {
      await session.insertFocusTest(test);
      return done({ test, found });
    }
    const compared = asked.at === undefined ? { ...test, at: known.at } : test;
    return sameValue(known, compared)
      ? done({ test: known, found })
      : refused('focus-test-id-taken', { id: test.id });
  });
