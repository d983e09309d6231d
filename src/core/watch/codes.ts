/** Why a check strip cannot be cut, or what is missing in what is watched. */
export const watchCodes = ['strip-needs-batch', 'strip-too-narrow'] as const;

export type WatchCode = (typeof watchCodes)[number];
