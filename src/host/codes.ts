/** What can be the matter with a file that a person named. */
export const hostCodes = ['file-not-found', 'file-not-written', 'stdin-empty'] as const;

export type HostCode = (typeof hostCodes)[number];
