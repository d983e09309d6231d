/** What can be the matter with a file that a person named. */
export const hostCodes = [
  'file-not-found',
  'file-not-readable',
  'file-is-a-folder',
  'file-too-big-to-read',
  'file-not-written',
  'file-name-too-long',
  'file-disk-full',
  'file-is-the-store',
  'stdin-empty',
  'stdin-too-big',
  'no-home-folder',
] as const;

export type HostCode = (typeof hostCodes)[number];
