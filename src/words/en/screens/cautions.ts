/** Around the cautions. */
export const cautionsText = { title: 'Mind this', more: 'More to mind' };
