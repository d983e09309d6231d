/** Around the cautions. */
export const cautionsText = { title: 'Mind this', more: 'And this' };
