/** What an answer has to say of earlier sheets. */
export const earlierCodes = ['earlier-cut-otherwise', 'earlier-scatter-otherwise'] as const;

/** What it has to say of a machine on which something was changed since everything was cut. */
export const changedCodes = ['machine-changed-since'] as const;

export type ChangedCode = (typeof changedCodes)[number];

/** Whether an answer says by this that it does not lean on earlier sheets. */
export const isEarlierCode = (code: string): boolean => earlierCodes.some((each) => each === code);

export type EarlierCode = (typeof earlierCodes)[number];
