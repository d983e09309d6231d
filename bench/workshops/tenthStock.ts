import { laterStock } from '../history/laterStock.ts';

/** The tenth stock of one material, with nine before it on record. */
export const { name, openWorkshop, flawRate, history } = laterStock(9);
