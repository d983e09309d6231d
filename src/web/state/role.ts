import { useSyncExternalStore } from 'react';
import { mayDo, type LeastRole, type Role } from '../../core/role.ts';
import { browserShelf } from './browserShelf.ts';
import { keepOn } from './shelf.ts';

const key = 'throughcut.role';

/** Other tabs hear of what is kept by the browser's own event, this one by the same. */
const hear = (heard: () => void): (() => void) => {
  addEventListener('storage', heard);
  return () => removeEventListener('storage', heard);
};

/** What was heard last: a phone off-line is what it was. Nothing was ever heard at the desk. */
const roleHere = (): Role => (browserShelf.getItem(key) as Role | null) ?? 'runs-the-place';

/** The server said what this device may do. */
export const keepRoleHere = (role: Role): void => {
  keepOn(browserShelf, key, role);
  dispatchEvent(new Event('storage'));
};

/** What a route takes of whoever calls it. */
export interface Takes {
  readonly least: LeastRole;
}

/** Tells whether this device may call a route, as it stands now. The server decides; this is to offer nothing that it refuses. */
export const useMay = (): ((call: Takes) => boolean) => {
  const role = useSyncExternalStore(hear, roleHere);
  return ({ least }) => mayDo(role, least);
};
