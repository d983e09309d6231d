import { markStripFileBy } from '../served/files/makeMarkStripFile.ts';
import { printer } from './printer.ts';

/** The file of one kind of a marking strip, as this program makes it. */
export const markStripFile = markStripFileBy(printer);
