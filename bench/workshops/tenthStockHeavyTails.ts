import { laterStock } from '../history/laterStock.ts';

/** The same where one shape in a while is far off the rest. */
const shop = laterStock(9, () => ({ link: 'student3' }));
export const name = `${shop.name}, heavy tails`;
export const { openWorkshop, flawRate, history } = shop;
