import { kerfCardFileBy } from '../served/files/makeKerfCardFile.ts';
import { printer } from './printer.ts';

/** The file of one kind of a comb or slot card, as this program makes it. */
export const kerfCardFile = kerfCardFileBy(printer);
