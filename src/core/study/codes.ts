/** What an answer has to say of earlier sheets. */
export const earlierCodes = ['earlier-cut-otherwise', 'earlier-scatter-otherwise'] as const;

export type EarlierCode = (typeof earlierCodes)[number];
