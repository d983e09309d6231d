/** What an answer has to say of earlier sheets. */
export const earlierCodes = ['earlier-cut-otherwise', 'earlier-scatter-otherwise'] as const;

/** Whether an answer says by this that it does not lean on earlier sheets. */
export const isEarlierCode = (code: string): boolean => earlierCodes.some((each) => each === code);

export type EarlierCode = (typeof earlierCodes)[number];
