/** What somebody may do who is let in, each of them all that those before it may and more. */
export const roles = ['reads-and-counts', 'decides', 'runs-the-place'] as const;
export type Role = (typeof roles)[number];

/** The least role that something takes; `anyone`: whoever asks, let in or not. */
export type LeastRole = Role | 'anyone';

/** What a phone may do that is let in while nobody says otherwise. */
export const usualRole: Role = 'decides';

/** Whether whoever has this role may do what takes at least that one. No role: not let in. */
export const mayDo = (role: Role | undefined, least: LeastRole): boolean =>
  least === 'anyone' || (role !== undefined && roles.indexOf(role) >= roles.indexOf(least));
