/** Asked once more before what cannot be taken back. */
export const actionText = { sure: 'Yes, remove it', unsure: 'Keep it' };
