import type { FocusTest } from '../../core/focus/focusTest.ts';
import type { Ports } from '../ports/ports.ts';

/** All focus tests, the latest first. */
export const listFocusTests = ({ store }: Pick<Ports, 'store'>): Promise<readonly FocusTest[]> =>
  store.read((session) => session.focusTests());
